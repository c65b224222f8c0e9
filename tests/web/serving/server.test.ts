import { mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { createServer, request } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { brotliCompressSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { HEADERS, type Served, serve } from '../../../web/serving/server.mjs';
import { start } from '../../../web/serving/start.mjs';

const outside = mkdtempSync(join(tmpdir(), 'overrow-serve-'));
const folder = join(outside, 'page');
let served: Served;
let port: number;

beforeAll(async () => {
  mkdirSync(join(folder, 'assets'), { recursive: true });
  writeFileSync(join(outside, 'secret.txt'), 'secret');
  mkdirSync(join(outside, 'page-beside'));
  writeFileSync(join(outside, 'page-beside', 'secret.txt'), 'secret');
  writeFileSync(join(folder, 'index.html'), '<meta name="application-name" content="Overrow" />');
  writeFileSync(join(folder, 'assets', 'a-1.js'), 'export {};');
  writeFileSync(join(folder, 'assets', 'c-1.js'), 'export const c = 1;');
  writeFileSync(join(folder, 'assets', 'c-1.js.br'), brotliCompressSync('export const c = 1;'));
  symlinkSync('a-1.js', join(folder, 'assets', 'b-1.js'));
  served = await serve(folder, { port: 0 });
  port = Number(new URL(served.url).port);
});
afterAll(async () => {
  await served.close();
  rmSync(outside, { recursive: true });
});

interface Answer {
  readonly status: number;
  readonly headers: Readonly<Record<string, string | string[] | undefined>>;
  readonly body: string;
}

/** Asks with the path as it is: `fetch` would tidy it first. */
const ask = (path: string, { method = 'GET', host = `localhost:${port}` } = {}): Promise<Answer> =>
  new Promise((resolve, reject) => {
    request({ host: '127.0.0.1', port, path, method, headers: { host } }, (answer) => {
      let body = '';
      answer.on('data', (part) => {
        body += part;
      });
      answer.on('end', () => resolve({ status: answer.statusCode!, headers: answer.headers, body }));
    })
      .on('error', reject)
      .end();
  });

describe('the server', () => {
  it('sends the page and its files, each with its type and how long it may be kept', async () => {
    for (const path of ['/', '/index.html', '/?a=1']) {
      const { status, headers, body } = await ask(path);
      expect([status, headers['content-type'], headers['cache-control']]).toEqual([
        200,
        'text/html; charset=utf-8',
        'no-cache',
      ]);
      expect(body).toContain('Overrow');
    }
    const { headers } = await ask('/assets/a-1.js');
    expect(headers['content-type']).toMatch(/^text\/javascript/);
    expect(headers['cache-control']).toContain('immutable');
  });
  it('sends every header of safety with every answer, whatever was asked', async () => {
    const answers = await Promise.all([
      ask('/'),
      ask('/none'),
      ask('/../secret.txt'),
      ask('/', { method: 'POST' }),
      ask('/', { host: 'elsewhere.example' }),
      ask('/', { host: `127.0.0.1:${port}` }),
      ask('/', { method: 'HEAD' }),
    ]);
    expect(answers.map(({ status }) => status)).toEqual([200, 404, 404, 405, 421, 308, 200]);
    for (const { headers } of answers)
      for (const [name, value] of Object.entries(HEADERS)) expect(headers[name.toLowerCase()]).toBe(value);
    expect(answers[5]!.headers.location).toBe(`http://localhost:${port}/`);
    expect(answers[6]!.body).toBe('');
  });
  it('sends nothing from outside its folder', async () => {
    for (const path of [
      '/../secret.txt',
      '/..%2fsecret.txt',
      '/%2e%2e/secret.txt',
      '/assets/../../secret.txt',
      '/assets/..%2f..%2fsecret.txt',
      '/../page-beside/secret.txt',
      '/..\\secret.txt',
      '/%5c..%5csecret.txt',
      `/${outside}/secret.txt`,
      '//secret.txt',
      '/%00',
      '/%',
      '/assets',
    ]) {
      const { status, body } = await ask(path);
      expect([path, status, body]).toEqual([path, 404, 'Not here.']);
    }
  });
  it('sends a packed copy to who takes it, and the file itself to who does not', async () => {
    const plain = await ask('/assets/c-1.js');
    expect([plain.headers['content-encoding'], plain.headers.vary, plain.body]).toEqual([
      undefined,
      'Accept-Encoding',
      'export const c = 1;',
    ]);
    // As a browser does: asks for it packed, and unpacks it.
    const packed = await fetch(new URL('assets/c-1.js', served.url), { headers: { 'accept-encoding': 'br' } });
    expect([packed.headers.get('content-encoding'), packed.headers.get('content-type')]).toEqual([
      'br',
      'text/javascript; charset=utf-8',
    ]);
    expect(await packed.text()).toBe('export const c = 1;');
  });
  it('from a folder of a host sends nothing beside it', async () => {
    const under = await serve(folder, { port: 0, under: '/some/folder/' });
    expect((await fetch(under.url)).status).toBe(200);
    expect((await fetch(new URL('/index.html', under.url))).status).toBe(404);
    await under.close();
  });
});

describe('starting', () => {
  it('serves at the one address, and says that it runs there already where it does', async () => {
    const free = await serve(folder, { port: 0 });
    const at = Number(new URL(free.url).port);
    await free.close();
    const first = await start(folder, at);
    expect([first.url, first.status]).toEqual([`http://localhost:${at}/`, 0]);
    const second = await start(folder, at);
    expect(second).toEqual({
      served: null,
      url: first.url,
      status: 0,
      says: `Overrow runs already: http://localhost:${at}/`,
    });
    await first.served!.close();
  });
  it('never moves to another port: where another program holds it, it says what to do', async () => {
    const other = createServer((_, response) => response.end('something else'));
    await new Promise<void>((done) => other.listen(0, '127.0.0.1', done));
    const { port: taken } = other.address() as AddressInfo;
    const { served: none, url, status, says } = await start(folder, taken);
    expect([none, url, status]).toEqual([null, null, 1]);
    expect(says).toContain(`http://localhost:${taken}/`);
    expect(says).toContain('end that program');
    other.close();
  });
});

describe('the content policy', () => {
  it('allows what the page is made of, from its own host, and nothing else', () => {
    const policy = Object.fromEntries(
      HEADERS['Content-Security-Policy']!.split('; ').map((part) => {
        const [name, ...values] = part.split(' ');
        return [name, values.join(' ')];
      }),
    );
    expect(policy).toEqual({
      'default-src': "'none'",
      'script-src': "'self' 'wasm-unsafe-eval'",
      'worker-src': "'self'",
      'manifest-src': "'self'",
      'style-src': "'self'",
      'img-src': "'self' blob: data:",
      'font-src': "'self'",
      'connect-src': "'self'",
      'base-uri': "'none'",
      'form-action': "'none'",
      'frame-ancestors': "'none'",
    });
  });
  it('is told to those who serve the page, header by header, as it is sent', () => {
    const readme = readFileSync('README.md', 'utf8');
    for (const [name, value] of Object.entries(HEADERS)) expect(readme).toContain(`${name}: ${value}`);
  });
});
