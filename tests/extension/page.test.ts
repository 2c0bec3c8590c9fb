import { describe, expect, test } from 'vitest';
import { page } from '../../extension/src/diagram/page.ts';

const html = page({
    script: 'https://parts.example/dist/preview.js',
    style: 'https://parts.example/dist/preview.css',
    source: 'https://parts.example',
    nonce: 'n0nce',
});

describe('the page inside the panel', () => {
    test('may run one script and load one style sheet, and ask for nothing else', () => {
        const policy = /Content-Security-Policy" content="([^"]+)"/.exec(html)?.[1];
        expect(policy?.split('; ')).toEqual([
            "default-src 'none'",
            "script-src 'nonce-n0nce'",
            'style-src https://parts.example',
            "base-uri 'none'",
            "form-action 'none'",
        ]);
        expect(html.match(/<script\b[^>]*>/g)).toEqual([
            '<script nonce="n0nce" src="https://parts.example/dist/preview.js">',
        ]);
    });

    test('has nothing that such a policy would hold back', () => {
        expect(html).not.toMatch(/\sstyle=|\son\w+=|<style|javascript:/i);
    });

    test('refers to nothing but its two parts', () => {
        const addresses = [...html.matchAll(/(?:src|href)="([^"]+)"/g)].map(([, address]) => address);
        expect(addresses).toEqual([
            'https://parts.example/dist/preview.css',
            'https://parts.example/dist/preview.js',
        ]);
    });

    test('an address cannot break out of its attribute', () => {
        const odd = page({ script: '"><script>', style: '', source: '"', nonce: 'n' });
        expect(odd).toContain('src="&quot;>&lt;script>"');
        expect(odd.match(/<script/g)).toHaveLength(1);
    });

    test('names every control for who does not see it', () => {
        for (const [, button] of html.matchAll(/<button([^>]*)>[−+]</g)) {
            expect(button).toMatch(/aria-label="Zoom (in|out)"/);
        }
        expect(html).toMatch(/role="toolbar" aria-label=/);
        expect(html).toMatch(/id="banner" role="status"/);
    });
});
