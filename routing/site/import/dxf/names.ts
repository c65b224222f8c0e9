/** A name as it reads: signs that old files write as `\U+00B0` are put in. */
export const plainName = (name: string): string =>
  !name.includes('\\')
    ? name
    : name.replace(/\\U\+([0-9a-f]{4})/gi, (_, code: string) => String.fromCharCode(Number.parseInt(code, 16)));

/** What a name is looked up by: names of a DXF do not know capitals from small letters. */
export const nameKey = (name: string): string => plainName(name).toLowerCase();
