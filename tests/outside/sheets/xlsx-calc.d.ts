declare module 'xlsx-calc' {
  import type { WorkBook } from '@e965/xlsx';

  /** Works every formula of a workbook in place. */
  function calculate(book: WorkBook): void;
  namespace calculate {
    /** Adds functions by the names that formulas call them. */
    // biome-ignore lint/suspicious/noExplicitAny: arguments are whatever a formula hands over
    function import_functions(functions: Readonly<Record<string, (...args: any[]) => unknown>>): void;
  }
  export default calculate;
}
