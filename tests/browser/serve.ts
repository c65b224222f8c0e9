import { readFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join, normalize } from 'node:path';

const TYPES: Record<string, string> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript',
  '.mjs': 'text/javascript',
  '.css': 'text/css',
  '.json': 'application/json',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.woff2': 'font/woff2',
  '.ttf': 'font/ttf',
  '.wasm': 'application/wasm',
};

/** What a careful static host sends; the page itself carries the rest of its policy. */
const HEADERS = {
  'Content-Security-Policy': "frame-ancestors 'none'",
  'Referrer-Policy': 'no-referrer',
  'X-Content-Type-Options': 'nosniff',
  'Cross-Origin-Opener-Policy': 'same-origin',
};

export interface Served {
  /** Address of the page, in a folder of the host and not at its root: the page must work from any folder. */
  readonly url: string;
  readonly close: () => Promise<void>;
}

/** Serves the built page from a folder on a free local port. */
export async function servePage(folder = 'dist'): Promise<Served> {
  const server = createServer(async (request, response) => {
    const path = decodeURIComponent(new URL(request.url ?? '/', 'http://localhost').pathname);
    const inside = path.startsWith('/some/folder/') ? path.slice('/some/folder'.length) : null;
    const file =
      inside === null ? null : join(folder, normalize(inside.endsWith('/') ? `${inside}index.html` : inside));
    try {
      if (file === null) throw new Error('outside the folder');
      const body = await readFile(file);
      response.writeHead(200, { 'Content-Type': TYPES[extname(file)] ?? 'application/octet-stream', ...HEADERS });
      response.end(body);
    } catch {
      response.writeHead(404, HEADERS);
      response.end('not here');
    }
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo;
  return {
    url: `http://127.0.0.1:${port}/some/folder/`,
    close: () => new Promise((resolve, reject) => server.close((error) => (error ? reject(error) : resolve()))),
  };
}
