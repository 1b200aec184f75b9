/**
 * Source of a package that takes the place of the server's native logger, so that output channels still
 * reach their files. It has the names that the server calls, each set by itself: Node finds them only so when
 * the server imports the package as a module. It writes each message at once.
 */
export const loggerSource = `'use strict';
const fs = require('fs');
const path = require('path');
const names = ['trace', 'debug', 'info', 'warning', 'error', 'critical'];
class Logger {
  constructor(file) {
    this.file = file;
    this.level = 2;
    this.plain = false;
    fs.mkdirSync(path.dirname(file), { recursive: true });
  }
  put(level, message) {
    if (level < this.level) return;
    const time = new Date().toISOString().replace('T', ' ').replace('Z', '');
    const line = this.plain ? String(message) : time + ' [' + names[level] + '] ' + message + '\\n';
    try {
      fs.appendFileSync(this.file, line);
    } catch {
      // a log that cannot be written must not stop the editor
    }
  }
  trace(m) { this.put(0, m); }
  debug(m) { this.put(1, m); }
  info(m) { this.put(2, m); }
  warn(m) { this.put(3, m); }
  error(m) { this.put(4, m); }
  critical(m) { this.put(5, m); }
  setLevel(level) { this.level = level; }
  getLevel() { return this.level; }
  clearFormatters() { this.plain = true; }
  setPattern() {}
  flush() {}
  drop() {}
}
exports.version = '0';
exports.setLevel = () => {};
exports.setFlushOn = () => {};
exports.shutdown = () => {};
exports.setPattern = () => {};
exports.Logger = Logger;
exports.createRotatingLogger = async (name, file) => new Logger(file);
exports.createAsyncRotatingLogger = async (name, file) => new Logger(file);
`;
