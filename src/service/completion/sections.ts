import type { TabDocument } from '../../notation/tabDocument';
import type { Offer } from './item';

/** Headings that the document has already, each once; the one on the line itself is left out. */
export function sectionOffers(document: TabDocument, line: number): readonly Offer[] {
  const names = new Set(
    document.sections.flatMap((section) =>
      section.line === line || section.name === '' ? [] : [section.name],
    ),
  );
  return [...names].map((name) => ({ label: `[${name}]`, detail: 'a heading used already' }));
}
