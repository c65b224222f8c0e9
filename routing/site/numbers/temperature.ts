const figure = (value: number): string => String(Number(value.toFixed(1)));

/** A temperature, given in degrees C, as both kinds of reader know it: `40 °C (104 °F)`. */
export const printTemperature = (celsius: number): string =>
  `${figure(celsius)} °C (${figure((celsius * 9) / 5 + 32)} °F)`;

/** A difference of temperatures, given in degrees C, likewise: `56 °C (100.8 °F)`. */
export const printTemperatureRange = (celsius: number): string =>
  `${figure(celsius)} °C (${figure((celsius * 9) / 5)} °F)`;
