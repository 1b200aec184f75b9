import { render } from 'preact';
import { readToNeck, type FromNeck, type ToNeck } from '../messages/neckMessages';
import { linkToExtension } from '../shared/extensionLink';
import '../shared/view.css';
import './neck.css';
import { Page, type PageActions, type PageState } from './page';
import { choiceOf, FIRST_TIME, isRemembered, type Remembered } from './remembered';

const link = linkToExtension<ToNeck, FromNeck, Remembered>(readToNeck, isRemembered);
const view = document.getElementById('view');

let state: PageState = {
  neck: undefined,
  nothing: '',
  leftHanded: false,
  problem: '',
  done: '',
  undoable: false,
  choices: link.remembered() ?? FIRST_TIME,
  width: view?.clientWidth ?? 0,
};

const actions: PageActions = {
  change(changed) {
    const before = JSON.stringify(choiceOf(state.choices));
    remember(changed);
    const choice = choiceOf(state.choices);
    if (JSON.stringify(choice) !== before) link.send({ kind: 'choose', choice });
  },
  select: (at) => remember({ at }),
  write({ string, fret }) {
    remember({ at: { string, fret } });
    link.send({ kind: 'write', string, fret });
  },
  undo: () => link.send({ kind: 'undo' }),
  copy: (text) => link.send({ kind: 'copy', text }),
  save: (upright) => {
    const { labels, marks } = state.choices;
    link.send({ kind: 'save', labels, every: marks === 'every', upright });
  },
};

function remember(changed: Partial<Remembered>): void {
  const choices = { ...state.choices, ...changed };
  link.remember(choices);
  draw({ choices, done: '' });
}

function draw(changed: Partial<PageState>): void {
  state = { ...state, ...changed };
  if (view) render(<Page state={state} actions={actions} />, view);
}

function hear(message: ToNeck): void {
  switch (message.kind) {
    case 'neck': {
      const board = message.answer.board ?? state.neck?.board;
      if (!board) return; // The page was made anew since; the answer to its `ready` is on the way.
      const { leftHanded, problem } = message;
      draw({ neck: { board, moment: message.answer.moment }, leftHanded, problem });
      return;
    }
    case 'nothing':
      draw({ neck: undefined, nothing: message.words });
      return;
    case 'done':
      draw({ done: message.words, undoable: message.undoable });
  }
}

link.listen((message) => {
  performance.mark('pegbox-heard');
  hear(message);
  // For those who measure how fast the neck follows the cursor.
  performance.measure(`pegbox-${message.kind}`, 'pegbox-heard');
  if (performance.getEntriesByType('measure').length > 500) performance.clearMeasures();
});
if (view) {
  new ResizeObserver(() => {
    if (view.clientWidth !== state.width) draw({ width: view.clientWidth });
  }).observe(view);
}
link.send({ kind: 'ready', choice: choiceOf(state.choices) });
