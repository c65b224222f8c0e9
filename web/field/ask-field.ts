import { useEffect, useState } from 'react';
import type { Deviation } from '../../calc/field/cures.ts';
import type { Tolerance } from '../../calc/field/tolerance.ts';
import type { SiteFile } from '../../routing/site/site.ts';
import { useDocument } from '../document/use-document.tsx';
import { failureWords } from '../words/failure-words.ts';
import type { FieldAsk, FieldNews, FieldRequest } from './field-request.ts';

/** How far an answer is. */
export interface FieldAnswer {
  /** From 0 to 1. */
  readonly share: number;
  readonly room?: Tolerance;
  readonly deviation?: Deviation | null;
  readonly fault?: string;
}

const NOTHING: FieldAnswer = { share: 0 };

let worker: Worker | null = null;
let sent: SiteFile | null = null;
let last = 0;
const hearers = new Map<number, (answer: FieldAnswer) => void>();

/** Asks away from the page; the answer calls it off. */
function ask(file: SiteFile, what: FieldAsk, hear: (answer: FieldAnswer) => void): () => void {
  last += 1;
  const number = last;
  hearers.set(number, hear);
  const request: FieldRequest = { number, ...(file !== sent && { file }), ask: what };
  sent = file;
  started().postMessage(request);
  return () => {
    if (!hearers.delete(number)) return;
    worker?.postMessage({ stop: number } satisfies FieldRequest);
  };
}

function started(): Worker {
  if (worker) return worker;
  worker = new Worker(new URL('./field-worker.ts', import.meta.url), { type: 'module' });
  worker.onmessage = ({ data }: MessageEvent<FieldNews>) => {
    const hear = hearers.get(data.number);
    if ('share' in data) {
      hear?.(data);
      return;
    }
    hearers.delete(data.number);
    hear?.({ share: 1, ...data });
  };
  worker.onerror = ({ message }) => {
    worker?.terminate();
    worker = null;
    sent = null;
    const fault = failureWords(new Error(message || 'module script failed'));
    for (const hear of hearers.values()) hear({ share: 0, fault });
    hearers.clear();
  };
  return worker;
}

/**
 * The answer for the open site, asked anew when the site or the question changes; null asks nothing. `key` says what is
 * asked, so that a question that is put together at each drawing of the page is asked once.
 */
export function useFieldAnswer(what: FieldAsk | null, key: string): FieldAnswer {
  const file = useDocument((state) => state.file);
  const [answer, setAnswer] = useState(NOTHING);
  useEffect(() => {
    setAnswer(NOTHING);
    return what ? ask(file, what, setAnswer) : undefined;
  }, [file, key]);
  return answer;
}
