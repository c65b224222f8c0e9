import { statedByPage } from './stated.ts';

/** Looks for what a page states away from the page, which ends this worker when it takes too long. */
const here = self as unknown as DedicatedWorkerGlobalScope;

here.onmessage = ({ data }: MessageEvent<{ readonly bytes: Uint8Array; readonly page: number }>) => {
  void statedByPage(data.bytes, data.page).then((stated) => here.postMessage(stated));
};
