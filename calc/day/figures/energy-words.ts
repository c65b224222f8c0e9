import { SHORT } from '../simulated/outcome.ts';

export const energyWords = (kwh: number): string => `${kwh.toFixed(1)} kWh`;

/** What a car lacks: what counts as short is never written as nothing. */
export const lackWords = (kwh: number): string => (kwh > SHORT && kwh < 0.05 ? 'less than 0.1 kWh' : energyWords(kwh));
