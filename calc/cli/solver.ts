import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import loadHighs from 'highs';
import { highsProgram } from '../day/optimum/highs-program.ts';
import type { NewLinearProgram } from '../day/optimum/linear-program.ts';

/** The solver's module lies beside the bundled command; from source it is the package's own. */
const BESIDE = fileURLToPath(new URL('./highs.wasm', import.meta.url));

export async function loadSolver(): Promise<NewLinearProgram> {
  const module = existsSync(BESIDE) ? { wasmBinary: readFileSync(BESIDE) as unknown as ArrayBuffer } : {};
  const highs = await loadHighs(module);
  return () => highsProgram(highs);
}
