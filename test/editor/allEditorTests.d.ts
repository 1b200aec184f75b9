// Made by src/tools/editorTests.mjs: imports every file of test/editor/suite.
declare module 'all-editor-tests';
