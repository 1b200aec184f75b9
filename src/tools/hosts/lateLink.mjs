// A way to a server of this machine on which what an open link carries comes late, as from far away: requests for files pass
// at once, messages between the page and the extension host do not.
import net from 'node:net';

/**
 * @param {number} port of the server
 * @param {number} delay in milliseconds, each way
 * @returns {Promise<{ port: number, stop: () => void }>}
 */
export async function lateLink(port, delay) {
  /** @type {Set<net.Socket>} */
  const open = new Set();
  const server = net.createServer((from) => {
    const to = net.connect(port, '127.0.0.1');
    let isLate = false;
    const pass = (/** @type {net.Socket} */ source, /** @type {net.Socket} */ target) => {
      open.add(source);
      source.on('data', (data) => {
        // A request that asks for an open link says so; from its answer on all comes late.
        if (source === from && /^upgrade: *websocket/im.test(data.toString('latin1', 0, 4000))) isLate = true;
        const write = () => void (target.destroyed || target.write(data));
        if (isLate) setTimeout(write, delay);
        else write();
      });
      source.on('error', () => target.destroy());
      source.on('close', () => {
        open.delete(source);
        setTimeout(() => target.destroy(), delay);
      });
    };
    pass(from, to);
    pass(to, from);
  });
  await new Promise((/** @type {(value?: undefined) => void} */ resolve) =>
    server.listen(0, '127.0.0.1', () => resolve()),
  );
  const address = server.address();
  return {
    port: address && typeof address === 'object' ? address.port : 0,
    stop() {
      for (const socket of open) socket.destroy();
      server.close();
    },
  };
}
