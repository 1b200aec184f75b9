// What a text is after some keys, told in the plainest way there is: lines of characters, rules of the staff by looking at
// characters, no reading of music. For texts under a count that names every column, where no rhythm has to be worked out.
// Written apart from what it is held against, and shares no code with it.

/** @typedef {{ lines: string[], line: number, character: number }} State */

const STRING_LINE = /^[A-G]\d +\|/;
const digit = (/** @type {string | undefined} */ sign) =>
  sign !== undefined && sign >= '0' && sign <= '9' && sign.length === 1;

/** What a key writes; keys of the number pad write what the others do. @param {string} key */
const signOf = (key) => (key === 'NumpadSubtract' ? '-' : key.replace(/^Numpad(?=\d$)/, ''));

export class PlainModel {
  /** @type {string[]} */
  lines;
  line = 0;
  character = 0;
  /** The column that Up and Down try to keep. */
  wish = 0;
  /** @type {{ state: State, kind: string }[]} */
  past = [];
  /** Kind of the last text edit, as long as the next of its kind is undone together with it. */
  open = '';
  /** Where the cursor stood when the last key was pressed. */
  origin = 0;
  /** Edits of the staff so far. */
  edits = 0;
  /** Whether a column was put or taken between two signs. */
  touched = false;

  /** @param {string} text @param {number} line @param {number} character */
  constructor(text, line, character) {
    this.lines = text.split('\n');
    this.go(line, character);
  }

  get text() {
    return this.lines.join('\n');
  }

  get own() {
    return this.lines[this.line] ?? '';
  }

  /** Offset of the first bar line, on a string line. */
  get bar() {
    return STRING_LINE.test(this.own) ? this.own.indexOf('|') : -1;
  }

  get onStaff() {
    return this.bar >= 0 && this.character > this.bar && this.character < this.own.length;
  }

  /** @param {number} line @param {number} character */
  go(line, character) {
    this.line = line;
    this.character = character;
    this.wish = character;
  }

  /** @returns {State} */
  save() {
    return { lines: [...this.lines], line: this.line, character: this.character };
  }

  /** Whether a key is one that this model has a rule for, where the cursor stands. @param {string} given */
  knows(given) {
    const key = signOf(given);
    const isCount = this.own.startsWith('count');
    const inLabel = this.bar >= 0 && this.character <= this.bar;
    switch (key) {
      case 'ArrowUp':
        return this.line > 0;
      case 'ArrowDown':
        return this.line < this.lines.length - 1;
      case 'ArrowLeft':
        return this.line > 0 || this.character > 0;
      case 'ArrowRight':
        return this.line < this.lines.length - 1 || this.character < this.own.length;
      case 'Control+z':
        return this.past.length > 0;
      case 'Home':
        return true;
      case 'End':
        return true;
      case 'Backspace':
        return !isCount && !inLabel && this.character > 0;
      case 'Delete':
        return !isCount && !inLabel && this.character < this.own.length && this.line > 2;
      default:
        if (isCount || inLabel) return false;
        // Prose stays prose: nothing is put before it, and no sign that could make a field of it.
        if (this.bar < 0) return this.line > 1 && this.character > 1 && this.own.length > 0;
        return this.character < this.own.length - 1 && !this.hasNoRule(key) && !this.opensWith(key);
    }
  }

  /**
   * Whether the column that a key adds or takes parts or joins signs of another string: only reading them says whether they
   * mean the same then. @param {string} key
   */
  asksForReading(key) {
    const trial = new PlainModel(this.text, this.line, this.character);
    trial.press(key);
    return trial.touched || trial.isChained();
  }

  /** Whether another note stands behind the bracket of a bracketed one: which of them moves to the other is to be read. */
  isChained() {
    if (this.bar < 0) return false;
    const { first, last } = this.system();
    const lines = this.lines.slice(first + 1, last + 1);
    return lines.some((line, own) =>
      [...line.matchAll(/[(<][hpt/\\~<(]*(?:\d+|x)/g)].some(({ 0: signs, index }) =>
        [...signs].some(
          (_, i) => i > 0 && lines.some((other, k) => k !== own && /[\dx(<]/.test(other[index + i] ?? '')),
        ),
      ),
    );
  }

  /**
   * Whether no plain rule says what a sign does here. In a column that no count names, such as one of second digits, it may
   * begin together with what stands beside it, and others with it.
   * @param {string} key
   */
  hasNoRule(key) {
    const at = this.own[this.character] === '|' ? this.character + 1 : this.character;
    // In place of a bend's sign, its amount would become a note.
    if (digit(key) && /[b.]/.test(this.own[at] ?? '') && digit(this.own[at + 1])) return true;
    const isNamed = this.lines[this.system().first]?.[at] !== ' ';
    return !isNamed && key !== '-' && !(digit(key) && digit(this.own[at - 1]));
  }

  /** Whether a line would begin with a sign that only a note can follow: it would be no string line. @param {string} key */
  opensWith(key) {
    return this.character === this.bar + 1 && /[hp~trb<>)]/.test(key);
  }

  /** @param {string} given */
  press(given) {
    const key = signOf(given);
    this.origin = this.character;
    switch (key) {
      case 'ArrowLeft':
        if (this.character > 0) this.go(this.line, this.character - 1);
        else this.go(this.line - 1, (this.lines[this.line - 1] ?? '').length);
        break;
      case 'ArrowRight':
        if (this.character < this.own.length) this.go(this.line, this.character + 1);
        else this.go(this.line + 1, 0);
        break;
      case 'ArrowUp':
      case 'ArrowDown':
        this.line += key === 'ArrowUp' ? -1 : 1;
        this.character = Math.min(this.wish, this.own.length);
        break;
      case 'Home':
        // No line of these texts begins with spaces.
        this.go(this.line, 0);
        break;
      case 'End':
        this.go(this.line, this.own.length);
        this.wish = Infinity;
        break;
      case 'Control+z':
        this.undo();
        break;
      case 'Backspace':
        if (this.bar >= 0) this.back();
        else this.prose('take', this.character - 1, '');
        return;
      case 'Delete':
        if (this.onStaff) this.clear(this.character);
        else this.prose('take forward', this.character, '');
        return;
      default:
        if (this.bar >= 0) this.write(key);
        else this.prose('put', this.character, key);
        return;
    }
    this.open = '';
  }

  undo() {
    const last = this.past.pop();
    if (!last) return;
    this.lines = last.state.lines;
    this.go(last.state.line, last.state.character);
  }

  /** @param {string} kind @param {number} from @param {string} put */
  prose(kind, from, put) {
    if (this.open !== kind) this.past.push({ state: this.save(), kind });
    this.open = kind;
    const to = kind === 'put' ? from : from + 1;
    this.lines[this.line] = this.own.slice(0, from) + put + this.own.slice(to);
    this.go(this.line, from + put.length);
  }

  /** Lines of the system: the first and the last one of them. */
  system() {
    let first = this.line;
    while (/^(count|[A-G]\d) +\|/.test(this.lines[first - 1] ?? '')) first--;
    let last = this.line;
    while (/^(count|[A-G]\d) +\|/.test(this.lines[last + 1] ?? '')) last++;
    return { first, last };
  }

  /** Others that write the second digit of a fret at an offset. @param {number} at */
  secondElsewhere(at) {
    const { first, last } = this.system();
    for (let i = first + 1; i <= last; i++)
      if (i !== this.line && digit(this.lines[i]?.[at]) && digit(this.lines[i]?.[at - 1])) return true;
    return false;
  }

  /** @param {number} at */
  addColumn(at) {
    const { first, last } = this.system();
    for (let i = first; i <= last; i++) {
      const line = this.lines[i] ?? '';
      if (i !== this.line) this.noteSigns(line, at - 1, at);
      this.lines[i] = line.slice(0, at) + (line.startsWith('count') ? ' ' : '-') + line.slice(at);
    }
  }

  /** @param {string} line @param {number} left @param {number} right */
  noteSigns(line, left, right) {
    const isSign = (/** @type {number} */ at) => !'-|'.includes(line[at] ?? '-');
    if (!line.startsWith('count') && isSign(left) && isSign(right)) this.touched = true;
  }

  /** Takes a column out where nothing stands in it. @param {number} at */
  takeColumn(at) {
    const { first, last } = this.system();
    for (let i = first; i <= last; i++) {
      const line = this.lines[i] ?? '';
      if (line[at] !== (line.startsWith('count') ? ' ' : '-')) return;
      // Two frets would become one; columns beside it that no count names would get another time.
      if (digit(line[at - 1]) && digit(line[at + 1]) && !line.startsWith('count')) return;
      if (line.startsWith('count') && (line[at - 1] === ' ' || line[at + 1] === ' ')) return;
    }
    for (let i = first; i <= last; i++) {
      const line = this.lines[i] ?? '';
      this.noteSigns(line, at - 1, at + 1);
      this.lines[i] = line.slice(0, at) + line.slice(at + 1);
    }
  }

  /** @param {number} at @param {string} sign */
  set(at, sign) {
    this.lines[this.line] = this.own.slice(0, at) + sign + this.own.slice(at + sign.length);
  }

  /** One step of the staff, with its undo. @param {() => void} change @param {number} to */
  step(change, to) {
    // One undo takes a key back whole, with the step over a bar sign that came before its sign.
    const state = { ...this.save(), character: this.origin };
    change();
    if (state.lines.join('\n') !== this.text) {
      this.past.push({ state, kind: 'staff' });
      this.edits++;
    }
    this.open = '';
    this.go(this.line, to);
  }

  /** @param {string} sign */
  write(sign) {
    let at = this.character;
    if (this.own[at] === '|') {
      at++;
      this.go(this.line, at);
      this.open = '';
    }
    const before = this.own[at - 1];
    if (sign === '-') return this.clear(at, at + 1);
    if (digit(sign) && digit(before)) return this.join(sign, at);
    if (digit(sign) && !digit(this.own[at]) && digit(this.own[at + 1])) {
      if (this.secondElsewhere(at + 1)) return;
      return this.step(() => {
        this.addColumn(at + 1);
        this.set(at, sign);
      }, at + 1);
    }
    const isWhole = digit(this.own[at]) && digit(this.own[at + 1]) && !digit(before);
    this.step(() => {
      this.set(at, isWhole ? `${sign}-` : sign);
      if (isWhole) this.takeColumn(at + 1);
    }, at + 1);
  }

  /** @param {string} sign @param {number} at */
  join(sign, at) {
    const first = this.own[at - 1] ?? '';
    const isFree = this.own[at] === '-' && !digit(this.own[at + 1]);
    // Behind the point of a harmonic or a bend come as many as one likes, and a harmonic's digits are no fret's.
    if (/[<b]\d{1,2}\.\d+$/.test(this.own.slice(0, at)) && isFree)
      return this.step(() => this.set(at, sign), at + 1);
    if (digit(this.own[at - 2]) || first === '0' || Number(first + sign) > 36) return;
    const here = this.own[at];
    if (digit(here)) return this.step(() => this.set(at, sign), at + 1);
    // A column that no count names was made for a second digit: there is room, unless something else stands there.
    const count = this.lines[this.system().first] ?? '';
    const isRoom = isFree && (count[at] === ' ' || count[at - 1] === ' ' || this.own[at - 2] === '<');
    // A column put there would part another fret's digits.
    if (!isRoom && this.secondElsewhere(at)) return;
    this.step(() => {
      if (!isRoom) this.addColumn(at);
      this.set(at, sign);
    }, at + 1);
  }

  back() {
    const at = this.character - 1;
    if (at === this.bar) return;
    if (this.own[at] === '|') {
      this.go(this.line, at);
      this.open = '';
      return;
    }
    this.clear(at, at);
  }

  /** @param {number} at @param {number} [to] */
  clear(at, to = this.character) {
    if (this.own[at] === '|') return;
    const before = digit(this.own[at]) && digit(this.own[at - 1]);
    const whole = digit(this.own[at]) && digit(this.own[at + 1]) && !before;
    this.step(() => {
      this.set(at, whole ? '--' : '-');
      if (before) this.takeColumn(at);
      if (whole) this.takeColumn(at + 1);
    }, to);
  }
}

/** Numbers from a seed, the same each time. @param {number} seed */
export function random(seed) {
  let state = seed >>> 0 || 1;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

const KEYS = [
  ...'0123456789012312',
  ...'hpx.-~x',
  ...'//\\\\bb((()<<>>',
  ...Array(5).fill('ArrowRight'),
  ...Array(5).fill('ArrowLeft'),
  ...Array(4).fill('ArrowUp'),
  ...Array(4).fill('ArrowDown'),
  ...Array(4).fill('Backspace'),
  ...Array(2).fill('Control+z'),
  ...Array(3).fill('Delete'),
  'Home',
  'End',
  ...[...'0123456789'].map((digit) => `Numpad${digit}`),
  'NumpadSubtract',
];

/**
 * A random key that the model has a rule for.
 * @param {PlainModel} model @param {() => number} next
 * @returns {string}
 */
export function nextKey(model, next) {
  for (;;) {
    const key = KEYS[Math.floor(next() * KEYS.length)] ?? '';
    if (model.knows(key) && (model.bar < 0 || key.length > 9 || !model.asksForReading(key))) return key;
  }
}
