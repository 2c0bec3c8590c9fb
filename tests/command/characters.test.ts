import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { command, layback } from './layback.ts';

test('typographic quotes are told by the built command too, and feet with a typographic mark', () => {
    const input = 'boat heron “Heron” {\n    length 32’\n    beam 11 ft\n}\n';
    const { status, stdout } = layback(['check', '--stdin'], { input });
    expect(status).toBe(1);
    expect(stdout).toContain('Use straight ones: `"Heron"`.');
    expect(stdout).toContain('Feet and inches are written in letters: `32 ft`.');
    expect(stdout).toContain('2 errors');
});

test('the bundle that the command takes byte by byte holds no character of more than one byte', () => {
    const [, bundle] = /"\.\/(layback\/command-\w+\.cjs)"/.exec(readFileSync(command, 'utf8')) ?? [];
    const bytes = readFileSync(join(command, '..', bundle!));
    expect(bytes.length).toBeGreaterThan(1_000_000);
    expect(bytes.findIndex((byte) => byte > 0x7f)).toBe(-1);
});
