import { HEADERS, type Served, serve } from '../../web/serving/server.mjs';

export type { Served };

/**
 * Serves the built page on a free local port, from a folder of the host and not at its root: the page must work from
 * any folder. `careful` is whether the host sends the headers that a careful one does.
 */
export const servePage = (folder = 'dist', careful = true): Promise<Served> =>
  serve(folder, { port: 0, under: '/some/folder/', headers: careful ? HEADERS : {} });
