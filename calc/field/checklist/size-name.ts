/** `8 AWG`, `1/0 AWG`, `250 kcmil`. */
export const sizeName = (size: string): string => (Number(size) >= 250 ? `${size} kcmil` : `${size} AWG`);
