import type { LibraryEntry } from '../service/library/libraryAnswer';
import type { SoundIndex } from '../service/find/soundIndex';
import type { Settings } from '../service/records';
import type { EditableDocument, LanguageService } from '../service/serviceApi';
import type { DocumentStore } from './documents';

/** What is known of a file of the workspace. */
export interface ShelvedFile {
  readonly entry: LibraryEntry;
  readonly index: SoundIndex;
}

interface Kept extends ShelvedFile {
  /** Which state of the text it was worked out from. */
  readonly stamp: string;
  readonly settings: Settings;
  /** The open document it came of; undefined for a file as it is saved. */
  readonly document: EditableDocument | undefined;
}

/**
 * What was worked out of the files of a workspace, which the client reads and sends, so that a file is read again only
 * when it has changed. A document that is open counts as it stands in the editor, saved or not.
 */
export class FileShelf {
  private readonly kept = new Map<string, Kept>();

  constructor(
    private readonly service: LanguageService,
    private readonly store: DocumentStore,
    private readonly settings: () => Settings,
  ) {}

  /** Works out a file from its saved text. */
  put(uri: string, stamp: string, text: string): void {
    this.keep(uri, stamp, this.service.open(text, this.settings()), undefined);
  }

  /** What is known of a file at this stamp; undefined where its text must be sent first. */
  get(uri: string, stamp: string): ShelvedFile | undefined {
    const open = this.store.get(uri);
    const kept = this.kept.get(uri);
    const current = kept?.settings === this.settings() ? kept : undefined;
    if (!open) return current?.document === undefined && current?.stamp === stamp ? current : undefined;
    const version = String(open.version);
    if (current?.document === open.document && current.stamp === version) return current;
    return this.keep(uri, version, open.document, open.document);
  }

  /** Forgets what is not among these files. */
  only(uris: ReadonlySet<string>): void {
    for (const uri of this.kept.keys()) if (!uris.has(uri)) this.kept.delete(uri);
  }

  private keep(
    uri: string,
    stamp: string,
    text: EditableDocument,
    document: EditableDocument | undefined,
  ): Kept {
    const { service } = this;
    const settings = this.settings();
    const kept = {
      entry: service.libraryEntry(text),
      index: service.soundIndex(text),
      stamp,
      settings,
      document,
    };
    this.kept.set(uri, kept);
    return kept;
  }
}
