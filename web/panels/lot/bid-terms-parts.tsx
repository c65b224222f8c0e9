import type { ReactNode } from 'react';
import { dayIn } from '../../../calc/prices/read-cells.ts';
import type { CostSheet } from '../../../calc/takeoff/bid/cost.ts';
import { priceStore } from '../../document/files/price-store.ts';
import { TextField } from '../../parts/fields.tsx';

/** So many of each may stand in a list. */
export const MAX_ENTRIES = 200;

export interface CostProps {
  readonly cost: CostSheet;
}

/** The list in use, for an edit that comes after others. */
export const inUse = () => priceStore.getState().list;

export const dayCheck = (text: string): string | null =>
  text === '' || dayIn(text) !== null ? null : 'a day such as 2026-12-31';

/** Where the name of another is typed: taken in with Enter or when it is left. */
export const NewText = ({
  label,
  taken,
  onTake,
}: {
  readonly label: string;
  readonly taken: readonly string[];
  readonly onTake: (text: string) => void;
}): ReactNode => (
  <TextField
    label={label}
    value=""
    check={(text) => (text === '' ? null : uniqueName(taken)(text))}
    onChange={(text) => text !== '' && onTake(text)}
  />
);

export const Remove = ({ words, onClick }: { readonly words: string; readonly onClick: () => void }) => (
  <button type="button" className="plain" onClick={onClick}>
    {words}
  </button>
);

/** A name that no other of its kind has. */
export const uniqueName =
  (others: readonly string[]) =>
  (text: string): string | null =>
    text === ''
      ? 'fill this in'
      : text.length > 200
        ? '200 letters or fewer'
        : others.includes(text)
          ? 'there is one of this name'
          : null;
