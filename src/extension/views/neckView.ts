import * as vscode from 'vscode';
import { REQUESTS } from '../../server/requests';
import type { NeckAnswer, NeckRequest } from '../../service/neck/neckAnswer';
import type { ServiceError } from '../../service/serviceApi';
import { readFromNeck, type FromNeck, type NeckChoice, type ToNeck } from '../../views/messages/neckMessages';
import { askedAt } from '../ranges';
import { saveFile } from '../saveFile';
import type { ServerRequests } from '../serverRequests';
import type { LastPlace, TabPlace } from './lastPlace';
import { SideView } from './sideView';
import { undoIn, writeBack } from './writeBack';

const NO_TAB = 'Open a file that ends in .pegbox and put the cursor into it: its neck is shown here.';

/** The neck in the side bar: it follows the cursor of the tab, and writes frets there. */
export function registerNeck(
  extension: vscode.Uri,
  requests: ServerRequests,
  places: LastPlace,
): vscode.Disposable {
  const neck = new NeckView(extension, requests, places);
  return vscode.Disposable.from(
    neck,
    vscode.commands.registerCommand('pegbox.showNeck', () => neck.show()),
    vscode.commands.registerCommand('pegbox.saveNeck', () =>
      neck.save({ labels: 'notes', every: false, upright: false }),
    ),
  );
}

class NeckView implements vscode.Disposable {
  private readonly view: SideView<FromNeck, ToNeck>;
  private readonly listening: vscode.Disposable;
  private choice: NeckChoice = {};
  /** The board that the page has. */
  private known: string | undefined;
  private asked = 0;
  /** What the neck wrote last and the text still ends with: where, and the version it left. */
  private written: { readonly place: TabPlace; readonly version: number } | undefined;

  constructor(
    extension: vscode.Uri,
    private readonly requests: ServerRequests,
    private readonly places: LastPlace,
  ) {
    this.view = new SideView(extension, {
      id: 'pegbox.neck',
      name: 'neck',
      title: 'Neck',
      read: readFromNeck,
      hear: (message) => void this.hear(message).catch((error: unknown) => this.failed(error)),
      seen: (visible) => {
        if (visible) this.follow();
      },
    });
    this.listening = places.onDidMove(() => this.follow());
  }

  show(): Thenable<unknown> {
    return this.view.show();
  }

  dispose(): void {
    this.listening.dispose();
    this.view.dispose();
  }

  private async hear(message: FromNeck): Promise<void> {
    switch (message.kind) {
      case 'ready':
        this.known = undefined;
        this.choice = message.choice;
        return this.update();
      case 'choose':
        this.choice = message.choice;
        return this.update();
      case 'write':
        return this.write(message.string, message.fret);
      case 'undo':
        return this.undo();
      case 'copy':
        await vscode.env.clipboard.writeText(message.text);
        return this.done('Copied');
      case 'save':
        return this.save(message);
    }
  }

  /** Where the answer fails the client reports it; the neck stays as it was. */
  private follow(): void {
    if (this.view.visible) this.update().catch(() => undefined);
  }

  private async update(): Promise<void> {
    const turn = ++this.asked;
    const place = this.places.current;
    if (!place) {
      this.known = undefined;
      this.view.send({ kind: 'nothing', words: NO_TAB });
      return;
    }
    const { known, choice } = this;
    const asked = { ...(known === undefined ? {} : { known }), ...given(choice) };
    let answer = await this.ask(place, asked);
    let problem = '';
    if ('error' in answer) {
      problem = answer.error;
      // The neck is shown all the same, with what it would mark by itself.
      const { frets } = choice;
      answer = await this.ask(place, given({ frets }));
    }
    if (turn !== this.asked) return; // The cursor has moved on meanwhile.
    if ('error' in answer) {
      this.view.send({ kind: 'done', words: answer.error, undoable: false });
      return;
    }
    if (answer.board) this.known = answer.board.id;
    const leftHanded = vscode.workspace.getConfiguration('pegbox', place.document).get('leftHanded', false);
    this.view.send({ kind: 'neck', answer, leftHanded, problem });
  }

  private ask(place: TabPlace, request: NeckRequest): Promise<NeckAnswer | ServiceError> {
    return this.requests.ask(REQUESTS.neck, { ...askedAt(place), ...request });
  }

  private async write(string: number, fret: number): Promise<void> {
    const place = this.places.current;
    if (!place) return this.done(NO_TAB);
    const answer = await this.requests.ask(REQUESTS.putFret, { ...askedAt(place), string, fret });
    const refused = await writeBack(place, answer);
    if (refused !== undefined) return this.done(refused);
    this.written = { place, version: place.document.version };
    const what = fret === 0 ? `String ${string} open` : `String ${string} fret ${fret}`;
    this.done(`${what} is written`);
  }

  /** Takes back what the neck wrote, as long as nothing else was written after it. */
  private async undo(): Promise<void> {
    const { written } = this;
    if (!written) return;
    const { place, version } = written;
    this.written = undefined;
    if (place.document.isClosed || place.document.version !== version) {
      this.done('The text was changed since; take that back in the text itself');
      return;
    }
    await undoIn(place);
    this.done('Taken back');
  }

  /** Saves the neck as the page, or the cursor, has it. */
  async save(look: {
    labels: 'notes' | 'degrees' | 'intervals';
    every: boolean;
    upright: boolean;
  }): Promise<void> {
    const place = this.places.current;
    if (!place) return void vscode.window.showErrorMessage(NO_TAB);
    const { document } = place;
    const leftHanded = vscode.workspace.getConfiguration('pegbox', document).get('leftHanded', false);
    const answer = await this.requests.ask(REQUESTS.neckSvg, {
      ...askedAt(place),
      ...given(this.choice),
      labels: look.labels,
      every: look.every,
      upright: look.upright,
      leftHanded,
    });
    if ('error' in answer) return void vscode.window.showErrorMessage(answer.error);
    await saveFile({ text: answer.svg, name: 'neck', ending: 'svg', title: 'Save neck' }, document.uri);
  }

  private done(words: string): void {
    this.view.send({ kind: 'done', words, undoable: this.written !== undefined });
  }

  private failed(error: unknown): void {
    this.done(`Pegbox could not do this: ${error instanceof Error ? error.message : String(error)}`);
  }
}

/** A choice as a request has it: what is left out does not stand in it. */
function given({ scale, chord, frets }: NeckChoice): Pick<NeckRequest, 'scale' | 'chord' | 'frets'> {
  return {
    ...(scale === undefined ? {} : { scale }),
    ...(chord === undefined ? {} : { chord }),
    ...(frets === undefined ? {} : { frets }),
  };
}
