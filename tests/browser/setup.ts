import { build } from 'vite';
import { browserVersion } from './chromium.ts';

/** Builds the page once for all browser tests and says which browser they run in. */
export default async function setup(): Promise<void> {
  console.log(`browser: ${await browserVersion()}`);
  if (!process.env.OVERROW_PAGE_BUILT) await build({ logLevel: 'warn' });
}
