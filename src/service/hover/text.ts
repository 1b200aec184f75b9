import { frequencyOf } from '../../music/frequency';
import { formatNoteName, pitchClassOf, type PitchName } from '../../music/noteName';
import { spellMidi, type SpellingContext } from '../../music/spelling';

/** Lines of a hover, each on a line of its own both as Markdown and as plain text. */
export function lines(...texts: readonly (string | undefined)[]): string {
  return texts.filter((text) => text !== undefined && text !== '').join('  \n');
}

/** Paragraphs of a hover. */
export function paragraphs(...texts: readonly (string | undefined)[]): string {
  return texts.filter((text) => text !== undefined && text !== '').join('\n\n');
}

/** A list in words: `D4, A3 and D2`. */
export function listed(items: readonly string[]): string {
  return items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} and ${items.at(-1) ?? ''}`;
}

/** The user's own words, so that none of their signs is read as Markdown; cut where they are long. */
export function quoted(text: string, most = 200): string {
  const short = text.length > most ? `${text.slice(0, most)}…` : text;
  return short.replace(/[\\`*_[\]<>~]/g, '\\$&');
}

/** Signs as they are written, in their own letters. */
export function code(text: string): string {
  return text.includes('`') ? quoted(text) : `\`${text}\``;
}

/** `with a capital`. */
export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** `74.0 Hz`: the frequency of a note in hertz under a reference pitch. */
export function hertz(midi: number, referencePitch: number): string {
  return `${frequencyOf(midi, referencePitch).toFixed(1)} Hz`;
}

/** ` 13.7 cents flat`; empty for a pitch of equal temperament. */
export function centsOff(midi: number): string {
  const cents = Math.round((midi - Math.round(midi)) * 1000) / 10;
  if (cents === 0) return '';
  return ` ${Math.abs(cents)} cents ${cents < 0 ? 'flat' : 'sharp'}`;
}

/** A pitch by name, as one of `names` spells it, else as the context does: `G#4`, with its cents where it has some. */
export function pitchText(midi: number, context: SpellingContext, names: readonly PitchName[] = []): string {
  const whole = Math.round(midi);
  const name = names.find((candidate) => pitchClassOf(candidate) === ((whole % 12) + 12) % 12);
  const note = name
    ? { ...name, octave: Math.floor((whole - name.alter) / 12) - 1 }
    : spellMidi(midi, context);
  return formatNoteName(note) + centsOff(midi);
}

/** `1 half step`, `3 half steps`. */
export function halfSteps(count: number): string {
  return `${count} half ${count === 1 ? 'step' : 'steps'}`;
}
