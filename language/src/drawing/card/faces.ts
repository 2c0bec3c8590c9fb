/**
 * A TrueType face without the tables by which letters are moved and exchanged for each other. Every word of a card is
 * as wide as it was measured then; and reading those tables took longer than drawing the card.
 *
 * Table directory: OpenType 1.9, "Organization of an OpenType font". What cannot be read is given back as it is.
 */
export function plainFace(face: Uint8Array): Uint8Array {
    const view = new DataView(face.buffer, face.byteOffset, face.byteLength);
    if (face.byteLength < headLength) return face;
    const count = view.getUint16(4);
    if (face.byteLength < headLength + count * entryLength) return face;
    const kept = Array.from({ length: count }, (_, i) => headLength + i * entryLength).filter((at) =>
        wanted.has(String.fromCharCode(...face.subarray(at, at + 4))),
    );
    // Offsets count from the start of the file: the tables stay where they are, the directory grows shorter.
    const plain = new Uint8Array(face);
    const into = new DataView(plain.buffer);
    into.setUint16(4, kept.length);
    for (const [index, at] of kept.entries()) {
        plain.set(face.subarray(at, at + entryLength), headLength + index * entryLength);
    }
    return plain;
}

const headLength = 12;
const entryLength = 16;

/** What a face needs to be drawn and named. */
const wanted: ReadonlySet<string> = new Set([
    ...['cmap', 'head', 'hhea', 'hmtx', 'maxp', 'name', 'OS/2', 'post'],
    ...['glyf', 'loca', 'cvt ', 'fpgm', 'prep'],
]);
