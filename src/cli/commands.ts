import type { Command } from './command';
import { check } from './commands/check';
import { chart } from './commands/chart';
import { chord } from './commands/chord';
import { compare } from './commands/compare';
import { convert } from './commands/convert';
import { find } from './commands/find';
import { list } from './commands/list';
import { exercise } from './commands/exercise';
import { fill, secondGuitar } from './commands/fill';
import { fit } from './commands/fit';
import { format } from './commands/format';
import { grip } from './commands/grip';
import { importTab } from './commands/import';
import { moveCapo } from './commands/moveCapo';
import { nameChords } from './commands/nameChords';
import { names } from './commands/names';
import { neck } from './commands/neck';
import { newTab } from './commands/newTab';
import { notes } from './commands/notes';
import { refinger } from './commands/refinger';
import { ringing } from './commands/ringing';
import { shapes } from './commands/shapes';
import { singer } from './commands/singer';
import { simplify } from './commands/simplify';
import { strings } from './commands/strings';
import { suit } from './commands/suit';
import { transpose } from './commands/transpose';
import { tuning } from './commands/tuning';
import { write } from './commands/write';

/** Every command, in the order of the help. */
export const COMMANDS: readonly Command[] = [
  check,
  format,
  fit,
  notes,
  names,
  newTab,
  importTab,
  nameChords,
  compare,
  find,
  list,
  convert,
  transpose,
  moveCapo,
  refinger,
  simplify,
  fill,
  secondGuitar,
  chart,
  suit,
  tuning,
  strings,
  chord,
  shapes,
  grip,
  neck,
  ringing,
  singer,
  write,
  exercise,
];
