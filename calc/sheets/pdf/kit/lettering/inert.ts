/**
 * A text as a sheet prints it: composed, on one line, without control, format and unassigned characters, half surrogates
 * or the marks that turn the direction of reading, but with the joiners of Arabic, scripts of India and emoji. What looks like markup is only letters.
 */
export const inert = (text: string): string =>
  /^[\x20-\x7e]*$/.test(text)
    ? text
    : text
        .normalize('NFC')
        .replace(/[\p{Cc}\p{Zl}\p{Zp}]+/gu, ' ')
        .replace(/\p{Cs}/gu, '\ufffd')
        .replace(JOINER_OR_UNSEEN, (_, joined: string | undefined) => joined ?? '');

/** A sign with the joiner that says how it is drawn beside the next, of scripts that have such; or what is not printed. */
const JOINER_OR_UNSEEN =
  /((?=[\p{L}\p{M}])[\p{Script=Arabic}\p{Script=Devanagari}\p{Script=Bengali}\p{Script=Gurmukhi}\p{Script=Gujarati}\p{Script=Tamil}\p{Script=Telugu}\p{Script=Kannada}\p{Script=Malayalam}][\u200c\u200d]|(?:\p{ExtPict}|\p{EMod}|\ufe0f)\u200d(?=\p{ExtPict}))|[\p{Cf}\p{Cn}\p{Co}]/gu;
