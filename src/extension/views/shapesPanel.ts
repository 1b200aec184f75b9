import * as vscode from 'vscode';
import { REQUESTS } from '../../server/requests';
import type { ShapeAnswer, ShapesAnswer } from '../../service/shapes/shapesAnswer';
import {
  readFromShapes,
  type FromShapes,
  type ShapesTab,
  type ToShapes,
} from '../../views/messages/shapesMessages';
import { askedAt } from '../ranges';
import { fileName } from '../fileName';
import { saveFile } from '../saveFile';
import type { ServerRequests } from '../serverRequests';
import { Follower } from './follower';
import { readFrets } from './fretsText';
import type { LastPlace, TabPlace } from './lastPlace';
import { Panel } from './panel';
import { writeBack } from './writeBack';

const NO_TAB = 'Put the cursor into a tab: shapes are found for the tuning that holds there.';
const NO_SHAPE =
  'Choose a shape first: run “Pegbox: Find Shapes…”, type a chord and choose one of its shapes.';

/** The shapes of a chord beside the text, in the tuning that holds at the cursor. */
export class ShapesPanel implements vscode.Disposable {
  private readonly panel: Panel<FromShapes, ToShapes>;
  private readonly follower: Follower<ToShapes>;
  private tab: ShapesTab = 'shapes';
  private chord = '';
  /** The shapes that are shown, and which of them is chosen. */
  private answer: ShapesAnswer | undefined;
  private chosen = '';
  /** What the command began with and a page that is not there yet has to be told. */
  private begin: ToShapes | undefined;

  constructor(
    extension: vscode.Uri,
    private readonly requests: ServerRequests,
    private readonly place: LastPlace,
  ) {
    this.panel = new Panel(extension, {
      id: 'pegbox.shapes',
      name: 'shapes',
      title: 'Shapes',
      read: readFromShapes,
      hear: (message) => this.hear(message),
      seen: (visible) => void (visible && this.follower.follow()),
    });
    this.follower = new Follower(
      this.panel,
      place,
      (current) => this.told(current),
      (message) => {
        if (message.kind === 'shapes') this.answer = message.answer;
      },
    );
  }

  /** Opens it, ready to be typed into. */
  async show(chord?: string): Promise<void> {
    const { current } = this.place;
    const there = chord ?? (current && (await this.requests.ask(REQUESTS.chordAt, askedAt(current))));
    const begin: ToShapes = { kind: 'begin', chord: there ?? null };
    const ready = this.panel.visible;
    this.begin = ready ? undefined : begin;
    this.panel.show(true);
    if (ready) this.panel.send(begin);
  }

  /**
   * Saves the picture of the chosen shape, or of another one that is shown.
   * @param to the address of the file; asked for when it is left out
   * @returns what was done, in a sentence; undefined when the user called it off
   */
  async savePicture(text = this.chosen, to?: vscode.Uri): Promise<string | undefined> {
    const shape = this.find(text);
    const { current } = this.place;
    if (!shape || !this.answer || !current) return NO_SHAPE;
    const file = await saveFile(
      {
        title: 'Save picture of the shape',
        text: shape.svg,
        name: pictureName(this.answer.chord, shape),
        ending: 'svg',
      },
      current.document.uri,
      to,
    );
    return file && `Saved ${fileName(file)}.`;
  }

  dispose(): void {
    this.follower.dispose();
    this.panel.dispose();
  }

  private hear(message: FromShapes): void {
    switch (message.kind) {
      case 'ready':
      case 'ask':
        [this.tab, this.chord] = [message.tab, message.chord];
        if (message.kind === 'ready') this.greet();
        void this.follower.follow();
        return;
      case 'chosen':
        this.chosen = message.shape;
        return;
      case 'insert':
        return this.tell(this.insert(message.shape));
      case 'copy':
        return this.tell(this.copy(message.shape));
      case 'picture':
        return this.tell(this.savePicture(message.shape));
      case 'go':
        return this.tell(this.go(message.line, message.column));
    }
  }

  private greet(): void {
    this.follower.forget();
    if (this.begin) this.panel.send(this.begin);
    this.begin = undefined;
  }

  private tell(doing: Promise<string | undefined>): void {
    doing
      .catch(
        (error: unknown) =>
          `Pegbox could not do this: ${error instanceof Error ? error.message : String(error)}`,
      )
      .then((words) => words !== undefined && this.panel.send({ kind: 'done', words }))
      .catch(() => undefined);
  }

  /** What the page asks for, in the tuning at the cursor. */
  private async told(current: TabPlace | undefined): Promise<ToShapes | undefined> {
    const { tab, chord } = this;
    if (tab !== 'song' && chord.trim() === '') return undefined;
    return current ? this.ask(current, tab, chord) : { kind: 'problem', tab, words: NO_TAB };
  }

  private async ask(place: TabPlace, tab: ShapesTab, chord: string): Promise<ToShapes> {
    if (tab === 'song') {
      const answer = await this.requests.ask(REQUESTS.songShapes, { uri: place.document.uri.toString() });
      return 'error' in answer ? { kind: 'problem', tab, words: answer.error } : { kind: tab, answer };
    }
    if (tab === 'kin') {
      const frets = readFrets(chord);
      const asked = frets ? { frets } : { chord };
      const answer = await this.requests.ask(REQUESTS.shapeKin, { ...askedAt(place), ...asked });
      return 'error' in answer
        ? { kind: 'problem', tab, words: answer.error }
        : { kind: tab, asked: chord, answer };
    }
    const answer = await this.requests.ask(REQUESTS.shapes, { ...askedAt(place), chord });
    return 'error' in answer
      ? { kind: 'problem', tab, words: answer.error }
      : { kind: tab, asked: chord, answer };
  }

  private find(text: string): ShapeAnswer | undefined {
    return this.answer?.shapes.find((shape) => shape.text === text);
  }

  /** Writes a shape where the cursor last stood; the focus is in the text then. */
  private async insert(text: string): Promise<string | undefined> {
    const shape = this.find(text);
    const { current } = this.place;
    if (!shape || !this.answer) return NO_SHAPE;
    if (!current) return NO_TAB;
    const { chord } = this.answer;
    const asked = { ...askedAt(current), frets: shape.frets, chord };
    const refused = await writeBack(current, await this.requests.ask(REQUESTS.insertShape, asked));
    return refused ?? `${chord}, ${shape.text}, is written. One undo takes it back.`;
  }

  private async copy(text: string): Promise<string> {
    const shape = this.find(text);
    if (!shape) return NO_SHAPE;
    await vscode.env.clipboard.writeText(shape.tab);
    return `${shape.text} is copied as tab.`;
  }

  private async go(line: number, column: number): Promise<string | undefined> {
    const { current } = this.place;
    if (!current) return NO_TAB;
    const { document, viewColumn } = current;
    const there = document.validatePosition(
      new vscode.Position(Math.max(0, line - 1), Math.max(0, column - 1)),
    );
    await vscode.window.showTextDocument(document, {
      ...(viewColumn !== undefined && { viewColumn }),
      selection: new vscode.Range(there, there),
    });
    return undefined;
  }
}

/** A file name of letters, digits and hyphens: `G-over-B-x20033`. */
function pictureName(chord: string, { frets }: ShapeAnswer): string {
  const name = chord
    .replaceAll('/', '-over-')
    .replaceAll('#', '-sharp')
    .replaceAll(/[^A-Za-z0-9-]/g, '');
  const high = frets.some((fret) => (fret ?? 0) > 9);
  return `${name}-${frets.map((fret) => fret ?? 'x').join(high ? '-' : '')}`;
}
