import type { JSX } from 'preact';
import { sentence } from './words';

/** What keeps someone from harm, in a box of its own; nothing where there is nothing to say. */
export function Cautions({ cautions }: { readonly cautions: readonly string[] }): JSX.Element | null {
  if (cautions.length === 0) return null;
  return (
    <div class="caution" role="note" aria-label="Caution">
      {cautions.map((caution) => (
        <p key={caution}>{sentence(caution)}</p>
      ))}
    </div>
  );
}
