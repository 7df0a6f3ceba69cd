import { inflateSync } from 'node:zlib';

const HEADER = 44;
const ENTRY = 20;

/**
 * The plain font file inside a WOFF 1.0 file, so that it is inflated once and not for every document.
 * W3C Recommendation 'WOFF File Format 1.0' (2012), sections 3 to 5.
 *
 * @throws where the bytes are not a WOFF 1.0 file
 */
export function unpackWoff(woff: Buffer): Buffer {
  if (woff.toString('latin1', 0, 4) !== 'wOFF') throw new Error('not a WOFF 1.0 file');
  const count = woff.readUInt16BE(12);
  const tables = Array.from({ length: count }, (_, index) => {
    const entry = HEADER + ENTRY * index;
    const offset = woff.readUInt32BE(entry + 4);
    const packed = woff.readUInt32BE(entry + 8);
    const length = woff.readUInt32BE(entry + 12);
    const bytes = woff.subarray(offset, offset + packed);
    return {
      tag: woff.subarray(entry, entry + 4),
      checksum: woff.readUInt32BE(entry + 16),
      bytes: packed < length ? inflateSync(bytes) : bytes,
    };
  });
  const power = 2 ** Math.floor(Math.log2(count));
  const directory = Buffer.alloc(12 + 16 * count);
  woff.copy(directory, 0, 4, 8);
  directory.writeUInt16BE(count, 4);
  directory.writeUInt16BE(power * 16, 6);
  directory.writeUInt16BE(Math.log2(power), 8);
  directory.writeUInt16BE((count - power) * 16, 10);
  const parts: Buffer[] = [directory];
  let offset = directory.length;
  for (const [index, { tag, checksum, bytes }] of tables.entries()) {
    const entry = 12 + 16 * index;
    tag.copy(directory, entry);
    directory.writeUInt32BE(checksum, entry + 4);
    directory.writeUInt32BE(offset, entry + 8);
    directory.writeUInt32BE(bytes.length, entry + 12);
    const padding = Buffer.alloc((4 - (bytes.length % 4)) % 4);
    parts.push(bytes, padding);
    offset += bytes.length + padding.length;
  }
  return Buffer.concat(parts);
}
