/*
 * Bytes as they go over the wire, where there is nothing but text.
 */

/** `btoa` takes characters, and only so many arguments go into one call. */
export function base64(content: Uint8Array | string): string {
    const bytes = typeof content === 'string' ? new TextEncoder().encode(content) : content;
    let characters = '';
    for (let at = 0; at < bytes.length; at += 0x8000) {
        characters += String.fromCharCode(...bytes.subarray(at, at + 0x8000));
    }
    return btoa(characters);
}

export function bytesOf(base64: string): Uint8Array<ArrayBuffer> {
    return Uint8Array.from(atob(base64), (character) => character.charCodeAt(0));
}
