import { convert } from './change/convert';
import { counterpart } from './change/counterpart';
import { moveCapo } from './change/moveCapo';
import { passages } from './change/passages';
import { refinger } from './change/refinger';
import { simplify } from './change/simplify';
import { transpose } from './change/transpose';
import { chord } from './chordAnswer';
import { writeChords } from './chordRow/writeChords';
import { columns } from './columns/columns';
import { copyBars } from './columns/copyBars';
import { compare } from './compare/compare';
import { completion } from './completion/completion';
import { diagnostics } from './diagnostics';
import { findBySound } from './find/findBySound';
import { soundIndex } from './find/soundIndex';
import { soundPattern } from './find/soundPattern';
import { typedPattern } from './find/typedPattern';
import { folding } from './folding';
import { format } from './format/format';
import { grip } from './grip/grip';
import { highlights } from './highlights';
import { hover } from './hover/hover';
import { inlayHints } from './inlayHints';
import { fixAll } from './mends/fixAll';
import { widerMends } from './mends/widerMends';
import { countOffers, writeCounts } from './mends/writeCounts';
import { sectionLens } from './lens';
import { libraryEntry } from './library/libraryEntry';
import { neck, neckSvg } from './neck/neck';
import { notes } from './notes';
import { open } from './open';
import { outline } from './outline';
import { noteNames } from './reading/noteNames';
import { renamable, rename } from './rename';
import { rewrites } from './rewrites';
import { ringing } from './ringing/ringing';
import { semanticTokens } from './semanticTokens';
import type { LanguageService } from './serviceApi';
import { tuningHandout } from './sheet/handout/handout';
import { insertShape } from './shapes/insertShape';
import { shapeKin } from './shapes/shapeKin';
import { shapes } from './shapes/shapes';
import { songShapes } from './shapes/songShapes';
import { tuningSheet } from './sheet/tuningSheet';
import { chordAt } from './shapes/chordAt';
import { applyFit } from './singer/applyFit';
import { fitSinger } from './singer/fitSinger';
import { requestedStrings } from './strings/requested';
import { instruments, startingTunings } from './start/choices';
import { insertSystem } from './start/insertSystem';
import { newTab } from './start/newTab';
import { strings } from './strings/strings';
import { chordChart } from './song/chordChart';
import { fillChords } from './song/fillChords';
import { secondGuitar } from './song/secondGuitar';
import { suit } from './suit/suit';
import { tuning } from './tuningAnswer';
import { tuningChoices } from './tuningChoices';
import { putFret } from './typing/putFret';
import { writeExercise } from './write/writeExercise';
import { writeNotes } from './write/writeNotes';

/** The language service: one file a feature, put together here. It keeps nothing of its own. */
export function createLanguageService(): LanguageService {
  return {
    open,
    diagnostics,
    rewrites,
    wideRewrites: countOffers,
    wideRewrite: writeCounts,
    widerMends,
    fixAll,
    format,
    hover,
    grip,
    ringing,
    fitSinger,
    applyFit,
    neck,
    neckSvg,
    outline,
    folding,
    highlights,
    completion,
    inlayHints,
    semanticTokens,
    convert,
    transpose,
    moveCapo,
    refinger,
    simplify,
    newTab,
    instruments,
    startingTunings,
    columns,
    copyBars,
    insertSystem,
    noteNames,
    writeChords,
    sectionLens,
    putFret,
    writeNotes,
    writeExercise,
    fillChords,
    secondGuitar,
    chordChart,
    suit,
    passages,
    counterpart,
    compare,
    renamable,
    rename,
    soundPattern,
    typedPattern,
    soundIndex,
    findBySound,
    libraryEntry,
    notes,
    tuningChoices,
    strings,
    requestedStrings,
    tuning,
    tuningSheet,
    shapes,
    insertShape,
    shapeKin,
    songShapes,
    tuningHandout,
    chord,
    chordAt,
  };
}
