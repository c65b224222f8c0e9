/** The name of a sheet's file, after the name of the site's. */
export const sheetFileName = (siteFile: string, ending: string): string =>
  siteFile.replace(/\.site\.json$/, '') + ending;
