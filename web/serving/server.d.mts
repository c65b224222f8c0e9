export interface Served {
  /** Address of the page. */
  readonly url: string;
  readonly close: () => Promise<void>;
}

export const HEADERS: Readonly<Record<string, string>>;

export function serve(
  folder: string,
  options: { readonly port: number; readonly under?: string; readonly headers?: Readonly<Record<string, string>> },
): Promise<Served>;
