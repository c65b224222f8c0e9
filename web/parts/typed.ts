/** What is typed in, as a selector. */
export const TYPED = 'input, textarea';

/**
 * Takes over what is being typed in a field, as leaving the field would, and goes on typing there. A text that the field
 * would not take stays in it; the answer then is the name of the field.
 */
export function takeField(page: Document = document): string | null {
  const field = page.activeElement;
  if (!(field instanceof HTMLElement) || !field.matches(TYPED)) return null;
  if (field.getAttribute('aria-invalid') === 'true') return nameOf(field, page);
  const { selectionStart: from, selectionEnd: to } = field as HTMLInputElement;
  field.blur();
  if (!field.isConnected) return null;
  field.focus({ preventScroll: true });
  if (from !== null && to !== null) (field as HTMLInputElement).setSelectionRange(from, to);
  return null;
}

const nameOf = (field: HTMLElement, page: Document): string =>
  field.getAttribute('aria-label') ??
  page.querySelector(`label[for="${CSS.escape(field.id)}"]`)?.textContent ??
  'a field';
