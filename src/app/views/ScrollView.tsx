import type { ReactNode } from 'react';

interface ScrollViewProps {
  readonly label: string;
  readonly children: ReactNode;
}

/** A long view; it takes the focus, so that keys can scroll it where nothing in it can be pressed. */
export const ScrollView = ({ label, children }: ScrollViewProps) => (
  // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keys
  <section className="view scrolls" aria-label={label} tabIndex={0}>
    {children}
  </section>
);
