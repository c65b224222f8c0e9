import '../tests/ensure-installed.mjs';

/** Serves the page on a local address and opens it where there is a screen to open it on. */
const { createServer } = await import('vite');
const screen =
  process.platform === 'darwin' || process.platform === 'win32' || process.env.DISPLAY || process.env.WAYLAND_DISPLAY;
const server = await createServer({ server: { open: Boolean(screen) && !process.env.CI } });
await server.listen();
server.printUrls();
