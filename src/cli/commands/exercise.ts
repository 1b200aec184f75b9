import { readChordName } from '../../music/chord/readChordName';
import { readScale } from '../../music/scale';
import type { WriteExerciseRequest } from '../../service/write/writeRequest';
import type { Asked, Command } from '../command';
import { PIECE_OPTIONS, VALUE, writePiece } from '../emptyPiece';
import { numberOf, wordOf } from '../optionValues';
import { readable } from '../readable';

/** Writes a scale or an arpeggio as an exercise. */
export const exercise: Command = {
  name: 'exercise',
  does: 'write a scale or the arpeggio of a chord as an exercise, with its fingers',
  operands: {
    word: 'NAME',
    help: 'a scale, such as D dorian, or a chord, such as Am7',
    many: true, // its words need no quotes
  },
  options: [
    { name: 'position', value: 'FRET|open', help: 'the fret of the index finger, or the open position' },
    { name: 'octaves', value: 'N', help: 'how many octaves, 1 to 4; 1, or what the position holds' },
    { name: 'direction', value: 'WAY', help: 'up, down, or "up and down" (the default)' },
    { name: 'no-fingers', help: 'leave the row of fingers out' },
    VALUE,
    ...PIECE_OPTIONS,
  ],
  async run(asked, output) {
    const request = requestOf(asked);
    return writePiece(asked, output, ({ service, document, place, settings }) =>
      service.writeExercise(document, place, request, settings),
    );
  },
};

function requestOf(asked: Asked): WriteExerciseRequest {
  const name = asked.operands.join(' ').trim();
  const position = asked.values.get('position');
  const inPosition =
    position?.trim().toLowerCase() === 'open'
      ? 'open'
      : numberOf(asked, 'position', { whole: true, least: 1, most: 36 });
  const octaves = numberOf(asked, 'octaves', { whole: true, least: 1, most: 4 });
  const direction = wordOf(asked, 'direction', ['up', 'down', 'up and down']);
  const value = asked.values.get('value');
  return {
    ...tonesOf(name),
    ...(inPosition !== undefined && { inPosition }),
    ...(octaves !== undefined && { octaves }),
    ...(direction !== undefined && { direction }),
    ...(value !== undefined && { value }),
    fingers: !asked.flags.has('no-fingers'),
  };
}

/** A scale where the words name one, else a chord: `D minor` is the scale, `Dm` and `D minor arpeggio` are the chord. */
function tonesOf(name: string): Pick<WriteExerciseRequest, 'scale' | 'chord'> {
  const chord = /^(.*\S)\s+arpeggio$/i.exec(name)?.[1];
  if (chord !== undefined) {
    readable(undefined, readChordName(chord));
    return { chord };
  }
  const scale = readScale(name);
  if (scale.ok) return { scale: name };
  if (readChordName(name).ok) return { chord: name };
  readable(undefined, scale);
  return { scale: name };
}
