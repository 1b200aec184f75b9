import type { ComponentChildren, JSX } from 'preact';

export interface SectionProps {
  readonly title: string;
  readonly open: boolean;
  readonly onToggle: (open: boolean) => void;
  readonly children: ComponentChildren;
}

/** A part of a page under a heading, which the reader may fold away. */
export function Section({ title, open, onToggle, children }: SectionProps): JSX.Element {
  return (
    <details
      class="section"
      open={open}
      // Also fires when Preact sets `open`; then there is nothing new to tell.
      onToggle={({ currentTarget }) => currentTarget.open !== open && onToggle(currentTarget.open)}
    >
      <summary>
        <h2>{title}</h2>
      </summary>
      <div class="inside">{children}</div>
    </details>
  );
}
