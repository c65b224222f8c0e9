import type { ComponentProps } from 'react';

/** A part that scrolls: it has a name and can be reached by keys. */
export function Scroller(props: ComponentProps<'section'> & { readonly 'aria-label': string }) {
  return (
    <section
      {...props}
      // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keys
      tabIndex={0}
    />
  );
}
