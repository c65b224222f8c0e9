import type { ListName } from '../../document/change/element-lists.ts';
import { rename } from '../../document/edits/rename.ts';
import { useDocumentStore } from '../../document/use-document.tsx';
import { TextField } from '../../parts/fields.tsx';

/** The id of an element: changed everywhere it is spoken of. */
export function NameField({ list, id }: { readonly list: ListName; readonly id: string }) {
  const document = useDocumentStore();
  const check = (to: string): string | null => {
    const renamed = rename(document.getState().file, id, to);
    return renamed.ok ? null : renamed.says;
  };
  return (
    <section className="fields" aria-label="Name">
      <TextField
        label="name"
        value={id}
        check={check}
        onChange={(to) => {
          const { file, apply, select } = document.getState();
          const renamed = rename(file, id, to);
          if (renamed.ok && apply(renamed.edit)) select([{ list, id: to }]);
        }}
      />
    </section>
  );
}
