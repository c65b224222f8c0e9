/**
 * A text as a sheet prints it: composed, on one line, without control, format and unassigned characters, half surrogates
 * or the marks that turn the direction of reading. What looks like markup is only letters.
 */
export const inert = (text: string): string =>
  /^[\x20-\x7e]*$/.test(text)
    ? text
    : text
        .normalize('NFC')
        .replace(/[\p{Cc}\p{Zl}\p{Zp}]+/gu, ' ')
        .replace(/\p{Cs}/gu, '\ufffd')
        .replace(/[\p{Cf}\p{Cn}\p{Co}]/gu, '');
