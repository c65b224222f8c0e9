import { readFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import { extname, join, resolve, sep } from 'node:path';

/** Sent with every answer; what a careful static host sends too. */
export const HEADERS = JSON.parse(readFileSync(new URL('./headers.json', import.meta.url), 'utf8'));

const TYPES = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.mjs': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json',
  '.webmanifest': 'application/manifest+json',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.woff2': 'font/woff2',
  '.ttf': 'font/ttf',
  '.wasm': 'application/wasm',
};

/**
 * Serves the files of a folder, to this machine alone, at one origin: the browser keeps a person's work by origin, so
 * who asks by another of the machine's names is sent to `localhost`. A packed copy beside a file (`.br`) is sent in its
 * place to who takes it. Port 0 takes a free one. Rejects where the port is taken (EADDRINUSE).
 */
export async function serve(folder, { port, under = '/', headers = HEADERS }) {
  const server = createServer(async (request, response) => {
    const answer = (status, more, body) => {
      response.writeHead(status, { ...headers, ...more });
      response.end(request.method === 'HEAD' ? undefined : body);
    };
    const at = server.address().port;
    const asked = request.headers.host;
    if (asked === `127.0.0.1:${at}` || asked === `[::1]:${at}`)
      return answer(308, { Location: `http://localhost:${at}${request.url}` });
    if (asked !== `localhost:${at}`) return answer(421, {}, 'This server answers for localhost alone.');
    if (request.method !== 'GET' && request.method !== 'HEAD') return answer(405, { Allow: 'GET, HEAD' });
    const file = fileOf(folder, under, request.url);
    try {
      const packed = /\bbr\b/.test(request.headers['accept-encoding'] ?? '')
        ? await readFile(`${file}.br`).catch(() => null)
        : null;
      const body = packed ?? (await readFile(file));
      // What is named by its content never changes; the rest is asked for anew each time.
      const kept = file.includes(`${sep}assets${sep}`) ? 'public, max-age=31536000, immutable' : 'no-cache';
      const type = TYPES[extname(file)] ?? 'application/octet-stream';
      const sent = { 'Content-Type': type, 'Cache-Control': kept, Vary: 'Accept-Encoding' };
      answer(200, packed ? { ...sent, 'Content-Encoding': 'br' } : sent, body);
    } catch {
      answer(404, { 'Content-Type': 'text/plain; charset=utf-8' }, 'Not here.');
    }
  });
  await new Promise((done, failed) => {
    server.once('error', failed).listen(port, '127.0.0.1', done);
  });
  const close = () =>
    new Promise((done) => {
      server.close(done);
      server.closeAllConnections();
    });
  return { url: `http://localhost:${server.address().port}${under}`, close };
}

/** The file that an address names; null where it names nothing in the folder. */
function fileOf(folder, under, url) {
  try {
    const path = decodeURIComponent(url.split(/[?#]/)[0]);
    if (!path.startsWith(under) || path.includes('\0')) return null;
    const inside = path.slice(under.length);
    const file = resolve(folder, `./${inside === '' || inside.endsWith('/') ? `${inside}index.html` : inside}`);
    return file.startsWith(join(resolve(folder), sep)) ? file : null;
  } catch {
    return null;
  }
}
