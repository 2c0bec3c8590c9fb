import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { rules } from './registry.ts';

const here = new URL('.', import.meta.url);

describe('the text of a rule', () => {
    test('is short: the middle one of them all is under 90 lines', () => {
        const lengths = rules
            .map(({ name }) => readFileSync(new URL(`${name}/${name}.ts`, here), 'utf8').split('\n').length)
            .sort((a, b) => a - b);
        expect(lengths[Math.floor(lengths.length / 2)]).toBeLessThan(90);
    });

    test.each(rules)(
        '$name reads figures: it computes no physics, parses nothing, touches no disk',
        ({ name }) => {
            const source = readFileSync(new URL(`${name}/${name}.ts`, here), 'utf8');
            const imports = [...source.matchAll(/from '([^']+)'/g)].map(([, path]) => path!);
            const allowed =
                /^\.\.\/[\w-]+\.ts$|^\.\.\/\.\.\/(units\/[\w-]+|plan\/(figures|finding|measure|model|origin|plan-at|names\/kinds))\.ts$/;
            expect(imports.filter((path) => !allowed.test(path))).toEqual([]);
            expect(source).not.toMatch(/\bDate\b|performance|process\b/);
        },
    );
});
