import type { Metal, Method } from '../../routing/site/schema/vocabulary.ts';

/** Length of a stick of raceway, ft. Common practice. */
export const STICK = 10;

/** `8 AWG`, `250 kcmil`. */
const sizeInWords = (size: string): string => (Number(size) >= 250 ? `${size} kcmil` : `${size} AWG`);

/** Conductor as a supplier knows it: `8 AWG copper THWN-2`. */
export const conductorSpec = (size: string, metal: Metal, insulation: string): string =>
  `${sizeInWords(size)} ${metal} ${insulation}`;

/** Conductor by its size and metal alone: `3/0 AWG copper`. */
export const wireSpec = (size: string, metal: Metal): string => `${sizeInWords(size)} ${metal}`;

/** Conductor without insulation: `1/0 AWG copper, bare`. */
export const bareSpec = (size: string, metal: Metal): string => `${sizeInWords(size)} ${metal}, bare`;

/** Raceway and what fits it: `EMT 3/4 in`; a tray is just a tray. */
export const racewaySpec = (method: Method, tradeSize: string | null): string =>
  tradeSize === null ? method : `${method} ${tradeSize} in`;

/** Breaker by its poles and rating: `3-pole 200 A`. */
export const breakerSpec = (poles: number, amps: number): string => `${poles}-pole ${amps} A`;

/** Elbows that are made, degrees. From memory. */
export const ELBOWS = [90, 60, 45, 30, 22.5, 15, 11.25] as const;

/** An angle as the trade writes it: `22-1/2 degrees`. */
export const degreesInWords = (degrees: number): string => {
  const whole = Math.floor(degrees);
  const part = degrees === whole ? '' : degrees - whole === 0.5 ? '-1/2' : '-1/4';
  return `${whole}${part} degrees`;
};
