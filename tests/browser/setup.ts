import { buildPage } from '../../web/serving/build.mjs';
import { browserVersion } from './chromium.ts';
import { findFirefox, NO_FIREFOX } from './firefox.ts';

/**
 * Builds the page once for all browser tests, as it is served to people, and says which browsers they run in: at the end
 * once more where there is but one.
 */
export default async function setup(): Promise<() => void> {
  const second = findFirefox();
  console.log(`browser: ${await browserVersion()}`);
  console.log(second === null ? NO_FIREFOX : `second browser: ${second}`);
  if (!process.env.OVERROW_PAGE_BUILT) buildPage(process.cwd());
  return () => {
    if (second === null) console.log(`\n${NO_FIREFOX}`);
  };
}
