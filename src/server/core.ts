/*
 * What the server loads once the client has its answer to `initialize`: all in one bundle, since records of the core
 * are compared by what they are and not by what they say.
 */
export { pasteTab } from '../formats/plainTab/pasteTab';
export { readPlainTab } from '../formats/plainTab/readPlainTab';
export { writePlainTab } from '../formats/plainTab/writePlainTab';
export { createLanguageService } from '../service/languageService';
