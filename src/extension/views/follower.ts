import type * as vscode from 'vscode';
import type { Message } from '../../views/messages/message';
import type { LastPlace, TabPlace } from './lastPlace';
import type { ViewLink } from './viewLink';

/**
 * Keeps a page in step with the cursor as long as the page is seen: it asks what holds at the place, and says so once.
 * @example new Follower(panel, place, (current) => current && ask(current))
 */
export class Follower<Out extends Message> implements vscode.Disposable {
  private readonly listening: vscode.Disposable;
  /** What was sent last, so that a cursor which moves within one tuning draws nothing anew. */
  private sent = '';
  private asked = 0;

  /**
   * @param answer what the page is told where the cursor stands, or where it stands in no tab; undefined to leave the page
   *   as it is. Where it fails the page stays too: the language client reports why.
   * @param telling called with what holds now, of several answers that overtake each other only with the last one asked for
   */
  constructor(
    private readonly link: ViewLink<Out>,
    private readonly place: LastPlace,
    private readonly answer: (current: TabPlace | undefined) => Promise<Out | undefined>,
    private readonly telling?: (message: Out) => void,
  ) {
    this.listening = place.onDidMove(() => void this.follow());
  }

  /** A page that is new, or made again, knows nothing yet. */
  forget(): void {
    this.sent = '';
  }

  /** Tells the page what holds at the cursor now, unless that is what it shows already. */
  async follow(): Promise<void> {
    if (!this.link.visible) return;
    const turn = ++this.asked;
    const message = await this.answer(this.place.current).catch(() => undefined);
    // A later question has been asked meanwhile.
    if (turn !== this.asked || !message) return;
    this.telling?.(message);
    const text = JSON.stringify(message);
    if (text === this.sent) return;
    this.sent = text;
    this.link.send(message);
  }

  dispose(): void {
    this.listening.dispose();
  }
}
