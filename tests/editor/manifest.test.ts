import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { initWasm, Resvg } from '@resvg/resvg-wasm';
import { describe, expect, test } from 'vitest';
import { layback, project } from '../workbench/project.ts';

const read = (name: string) => readFileSync(path.join(project, name));
const json = (name: string) => JSON.parse(read(name).toString());

describe('the manifest', () => {
    const manifest = json('package.json');

    test('names only files that exist, from the folders that an extension is served from', () => {
        const named = (
            JSON.stringify([manifest.icon, manifest.contributes]).match(/"(?:\.\/)?extension\/[^"]+"/g) ?? []
        ).map((quoted) => quoted.replace(/^"(?:\.\/)?|"$/g, ''));
        expect(named).toContain('extension/media/icon.png');
        expect(named).toContain('extension/syntaxes/layback.tmLanguage.json');
        for (const name of named) {
            expect([name, existsSync(path.join(project, name))]).toEqual([name, true]);
            expect([name, layback.parts.some((part) => name.startsWith(part))]).toEqual([name, true]);
        }
    });

    test('has the icon that its drawing gives, 128 px square', async () => {
        await initWasm(read('node_modules/@resvg/resvg-wasm/index_bg.wasm'));
        const wanted = new Resvg(read('extension/media/icon.svg').toString()).render();
        const icon = read('extension/media/icon.png');
        expect([wanted.width, wanted.height]).toEqual([128, 128]);
        expect(Buffer.from(wanted.asPng()).equals(icon)).toBe(true);
    });

    test('brings drawings that take nothing from elsewhere', () => {
        const drawings = readdirSync(path.join(project, 'extension/media')).filter((name) =>
            name.endsWith('.svg'),
        );
        expect(drawings.length).toBeGreaterThanOrEqual(3);
        for (const name of drawings) {
            const drawing = read(`extension/media/${name}`).toString();
            expect(drawing.replace('http://www.w3.org/2000/svg', '')).not.toMatch(
                /https?:|href|<style|<script|<image/,
            );
        }
    });
});

describe('the language configuration', () => {
    const { wordPattern, indentationRules, onEnterRules } = json('extension/language-configuration.json');

    test.each([
        ['a name', 'ink-pusher-2'],
        ['a name with letters of any script', 'über-käfer'],
        ['a date', '2026-02-14'],
        ['a time', '07:42'],
        ['a number', '-0.5'],
        ['a name half typed', 'fifty-'],
    ])('%s is one word: %s', (_, word) => {
        const found = `lure ${word} {`.match(new RegExp(wordPattern.pattern, `${wordPattern.flags}g`));
        expect(found).toEqual(['lure', word]);
    });

    test('a block moves what follows inward, and its end outward', () => {
        const inward = new RegExp(indentationRules.increaseIndentPattern);
        const outward = new RegExp(indentationRules.decreaseIndentPattern);
        for (const line of ['spread a {', '  port short corner { // near', 'lure a "B" jet like c {']) {
            expect([line, inward.test(line)]).toEqual([line, true]);
        }
        for (const line of [
            'wash { near 1 m }',
            '// spread a {',
            ' * for a {',
            'note "{"',
            'speed 8 kn',
            '}',
        ]) {
            expect([line, inward.test(line)]).toEqual([line, false]);
        }
        expect([outward.test('  }'), outward.test('speed 8 kn')]).toEqual([true, false]);
    });

    test('a comment for the reader goes on in the next line until it is closed', () => {
        const goesOn = (before: string, previous: string, after = '') =>
            (
                onEnterRules as {
                    beforeText: string;
                    previousLineText?: string;
                    afterText?: string;
                    action: { appendText?: string };
                }[]
            ).find(
                (rule) =>
                    new RegExp(rule.beforeText).test(before) &&
                    (!rule.previousLineText || new RegExp(rule.previousLineText).test(previous)) &&
                    (!rule.afterText || new RegExp(rule.afterText).test(after)),
            )?.action.appendText;
        expect(goesOn('/** Settled', '')).toBe(' * ');
        expect(goesOn('    /** Settled', '', ' */')).toBe(' * ');
        expect(goesOn(' * weather', '/** Settled')).toBe('* ');
        expect(goesOn(' */', ' * weather')).toBeUndefined();
        expect(goesOn('/** Settled. */', '')).toBeUndefined();
        expect(goesOn('    speed 8 kn', '')).toBeUndefined();
    });
});
