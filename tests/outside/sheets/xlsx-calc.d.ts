declare module 'xlsx-calc' {
  import type { WorkBook } from '@e965/xlsx';

  /** Works every formula of a workbook in place. */
  function calculate(book: WorkBook): void;
  namespace calculate {
    /** Adds functions by the names that formulas call them. */
    function import_functions(
      functions: Readonly<Record<string, (...args: never[]) => unknown>>,
      options?: { readonly override?: boolean },
    ): void;
  }
  export default calculate;
}
