import * as vscode from 'vscode';
import { REQUESTS } from '../../server/requests';
import { readFromSheet, type FromSheet, type ToSheet } from '../../views/messages/sheetMessages';
import type { Handouts } from '../commands/saveHandout';
import { askedAt } from '../ranges';
import type { ServerRequests } from '../serverRequests';
import { Follower } from './follower';
import type { LastPlace, TabPlace } from './lastPlace';
import { Panel } from './panel';

const NO_TAB = 'Put the cursor into a tab: this page shows the tuning that holds there.';

/** The tuning sheet beside the text: it follows the tuning that holds at the cursor, as long as it is seen. */
export class SheetPanel implements vscode.Disposable {
  private readonly panel: Panel<FromSheet, ToSheet>;
  private readonly follower: Follower<ToSheet>;
  /** The tuning to come from; empty for the usual choice. */
  private from = '';

  constructor(
    extension: vscode.Uri,
    private readonly requests: ServerRequests,
    place: LastPlace,
    private readonly handouts: Handouts,
  ) {
    this.panel = new Panel(extension, {
      id: 'pegbox.tuningSheet',
      name: 'sheet',
      title: 'Tuning Sheet',
      read: readFromSheet,
      hear: (message) => this.hear(message),
      seen: (visible) => void (visible && this.follower.follow()),
    });
    this.follower = new Follower(this.panel, place, async (current) =>
      current ? this.ask(current) : { kind: 'nothing', words: NO_TAB },
    );
  }

  show(): void {
    this.panel.show();
  }

  dispose(): void {
    this.follower.dispose();
    this.panel.dispose();
  }

  private hear(message: FromSheet): void {
    switch (message.kind) {
      case 'ready':
      case 'from':
        this.from = message.from;
        if (message.kind === 'ready') this.follower.forget();
        void this.follower.follow();
        return;
      case 'copy':
        void this.copy(message.text, `${message.what} copied.`);
        return;
      case 'handout':
        void this.handout(message.as);
    }
  }

  private async ask(place: TabPlace): Promise<ToSheet> {
    const at = askedAt(place);
    const [asked, strain, choices] = await Promise.all([
      this.requests.ask(REQUESTS.tuningSheet, this.from === '' ? at : { ...at, from: this.from }),
      this.requests.ask(REQUESTS.strings, at),
      this.requests.ask(REQUESTS.tuningChoices, at),
    ]);
    // A tuning to come from that cannot be read is told beside its box; the sheet stands without it.
    const fails = 'error' in asked && this.from !== '';
    const sheet = fails ? await this.requests.ask(REQUESTS.tuningSheet, at) : asked;
    if ('error' in sheet) return { kind: 'nothing', words: sheet.error };
    return {
      kind: 'sheet',
      sheet,
      choices,
      strain: 'error' in strain ? null : strain,
      strainProblem: 'error' in strain ? strain.error : '',
      fromProblem: fails ? asked.error : '',
    };
  }

  private async copy(text: string, words: string): Promise<void> {
    await vscode.env.clipboard.writeText(text);
    this.panel.send({ kind: 'done', words });
  }

  private async handout(as: 'svg' | 'copy'): Promise<void> {
    const words = await this.handouts.make(as, this.from === '' ? {} : { from: this.from });
    if (words !== undefined) this.panel.send({ kind: 'done', words });
  }
}
