import { availableParallelism } from 'node:os';
import { defineConfig, type TestProjectInlineConfiguration } from 'vitest/config';
import { BaseSequencer, type TestSpecification } from 'vitest/node';
import HEAVY from './tests/heavy.json' with { type: 'json' };

const BROWSER = 'tests/browser/**';

/** Tests of the rooms: which, whether each of their files loads all modules for itself, and after which group they run. */
const rooms = (name: string, include: readonly string[], exclude: readonly string[], isolate: boolean, group: number) =>
  ({
    test: {
      name,
      include: [...include],
      // A project's own list: vitest does not add to it what is excluded on the command line.
      exclude: [BROWSER, ...exclude],
      isolate,
      environment: 'node',
      setupFiles: ['tests/seed.ts'],
      // Left to itself it keeps one core free, and of two that is half.
      maxWorkers: Math.max(2, availableParallelism() - 1),
      sequence: { groupOrder: group },
      // Counts are what hold effort: a limit of time is there for what never ends, on however busy a machine.
      testTimeout: 600_000,
      hookTimeout: 600_000,
    },
  }) satisfies TestProjectInlineConfiguration;

const EVERY = ['tests/**/*.test.ts'];

/**
 * Light tests load each module once for all: to load them for each file takes longer than the tests. What takes long or
 * swaps a module is in heavy.json, each with modules of its own. Files that are named by hand have that too, light or not.
 */
function projectsOfRooms(): TestProjectInlineConfiguration[] {
  if (process.env.OVERROW_QUICK) return [rooms('rooms', EVERY, HEAVY, false, 0)];
  if (process.env.OVERROW_ALL) return [rooms('light', EVERY, HEAVY, false, 0), rooms('heavy', HEAVY, [], true, 1)];
  return [rooms('rooms', EVERY, [], true, 1)];
}

/** What takes longest begins first, so that no worker is left alone with it at the end; a new machine has no times to go by. */
const LONGEST = [
  ...['hand/hand', 'propose-ways', 'patterns', 'load', 'hanging', 'sharing-ways'].map((name) => `calc/propose/${name}`),
  ...['outside/portfolio/portfolio', 'calc/plan/bounds', 'project/package'],
  ...['offline', 'page', 'firefox', 'board', 'same-bytes', 'alternatives', 'sheets'].map((name) => `browser/${name}`),
].map((name) => `/tests/${name}.test.ts`);

class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const rank = ({ moduleId }: TestSpecification): number => {
      const place = LONGEST.findIndex((file) => moduleId.endsWith(file));
      return place < 0 ? LONGEST.length : place;
    };
    return (await super.sort(files)).toSorted((a, b) => rank(a) - rank(b));
  }
}

export default defineConfig({
  test: {
    sequence: { sequencer: LongestFirst },
    projects: [
      ...projectsOfRooms(),
      {
        test: {
          name: 'browser',
          include: [`${BROWSER}/*.test.ts`],
          environment: 'node',
          setupFiles: ['tests/seed.ts'],
          globalSetup: ['tests/browser/setup.ts'],
          // Each file has a browser and a server of its own, and waits for them much of its time.
          maxWorkers: 2,
          sequence: { groupOrder: 2 },
          // What is waited for comes at once, but not on a machine that has much else to do.
          expect: { poll: { timeout: 60_000 } },
          testTimeout: 600_000,
          hookTimeout: 600_000,
        },
      },
    ],
  },
});
