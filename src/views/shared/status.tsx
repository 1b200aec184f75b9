import type { JSX } from 'preact';

/** What was just done, for all to read and for screen readers to hear. It is always there, since only then it is heard. */
export function Status({ words }: { readonly words: string }): JSX.Element {
  return (
    <p class="status" role="status">
      {words}
    </p>
  );
}
