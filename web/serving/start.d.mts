import type { Served } from './server.mjs';

export const PORT: number;

export function start(
  folder: string,
  port?: number,
): Promise<{
  readonly served: Served | null;
  readonly url: string | null;
  /** What the command ends with where nothing is served. */
  readonly status: number;
  readonly says: string;
}>;
