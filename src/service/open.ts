import { Document } from '../notation/document';
import type { Header } from '../notation/header';
import type { ParsedLine } from '../notation/parsedLine';
import type { NoteReading } from '../notation/reading';
import type { FieldGroup, PartPlace, RingingNote, Section, System } from '../notation/tabDocument';
import type { Fraction } from '../music/fraction';
import type { Settings, TextEdit } from './records';
import type { EditableDocument } from './serviceApi';

/**
 * Reads a text into a document that follows edits. Never fails: what cannot be read is told by the diagnostics.
 * @example open('tuning: DADGAD\n', DEFAULT_SETTINGS).headerAt(0).tuning.name // 'DADGAD'
 */
export function open(text: string, settings: Settings): EditableDocument {
  return new OpenedDocument(new Document(text, settings.tunings));
}

/** A document that takes the settings of the user where the notation knows tunings only. */
class OpenedDocument implements EditableDocument {
  constructor(private readonly inner: Document) {}

  edit(edits: readonly TextEdit[]): void {
    this.inner.edit(edits);
  }

  configure(settings: Settings): void {
    this.inner.configure(settings.tunings);
  }

  get lineCount(): number {
    return this.inner.lineCount;
  }

  line(index: number): ParsedLine {
    return this.inner.line(index);
  }

  text(): string {
    return this.inner.text();
  }

  get systems(): readonly System[] {
    return this.inner.systems;
  }

  systemAt(line: number): System | undefined {
    return this.inner.systemAt(line);
  }

  headerAt(line: number): Header {
    return this.inner.headerAt(line);
  }

  get sections(): readonly Section[] {
    return this.inner.sections;
  }

  get fieldGroups(): readonly FieldGroup[] {
    return this.inner.fieldGroups;
  }

  get parts(): readonly (string | undefined)[] {
    return this.inner.parts;
  }

  get nearMisses(): readonly number[] {
    return this.inner.nearMisses;
  }

  placeOf(system: System): PartPlace {
    return this.inner.placeOf(system);
  }

  ringingInto(system: System): readonly RingingNote[] {
    return this.inner.ringingInto(system);
  }

  endOf(system: System, note: NoteReading): Fraction {
    return this.inner.endOf(system, note);
  }
}
