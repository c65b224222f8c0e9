import { startTyping } from '../typed/typing.ts';
import { type } from './typed-in.ts';
import { useDesk } from './use-desk.ts';

/** Begins to type where the next place lies on the site. */
export function TypeThem() {
  const desk = useDesk();
  return (
    <button
      type="button"
      className="plain"
      title="Type the x and y of the next place (T)"
      onClick={() => type(desk, startTyping('x'))}
    >
      type them
    </button>
  );
}
