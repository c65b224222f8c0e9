/** The name of a sample as a menu has it: `library-lot` is "Library lot". */
export const sampleWords = (name: string): string => name.charAt(0).toUpperCase() + name.slice(1).replaceAll('-', ' ');
