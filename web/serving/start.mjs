import { serve } from './server.mjs';

/** A port of its own, the same each time: the browser keeps a person's work under the address of the page. */
export const PORT = 4817;

/**
 * Serves the built page at its one address. Where that is taken nothing is served elsewhere, for the kept work would
 * not be there: it is said who answers and what to do. `served` is null then, `status` is for the command to end with.
 */
export async function start(folder, port = PORT) {
  try {
    const served = await serve(folder, { port });
    return { served, url: served.url, status: 0, says: `Overrow: ${served.url}  (Ctrl+C ends it)` };
  } catch (error) {
    if (error.code !== 'EADDRINUSE') throw error;
    const url = `http://localhost:${port}/`;
    if (await isOverrow(url)) return { served: null, url, status: 0, says: `Overrow runs already: ${url}` };
    const says = `Another program holds ${url}, under which your browser keeps your work for Overrow: end that program, then start again.`;
    return { served: null, url: null, status: 1, says };
  }
}

async function isOverrow(url) {
  try {
    const answer = await fetch(url, { signal: AbortSignal.timeout(3000) });
    return (await answer.text()).includes('<meta name="application-name" content="Overrow"');
  } catch {
    return false;
  }
}
