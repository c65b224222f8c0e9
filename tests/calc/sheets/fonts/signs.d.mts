/** What each typeface of the sheets has, as `signs.json` says it. */
export declare function signsOfTypefaces(): Readonly<Record<string, Readonly<Record<string, string>>>>;
