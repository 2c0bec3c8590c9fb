import { dirname, join, parse, resolve } from 'node:path';
import { messageOf } from '../plan/finding.ts';
import type { Asked } from './asking.ts';
import { check } from './checking.ts';
import { drawView, type ViewOptions } from './draw-views.ts';
import { readPlan } from './reading.ts';
import { Refusal } from './refusal.ts';
import { terminal } from './terminal.ts';
import { showPath } from './walk.ts';
import { writeWhole } from './writing.ts';

/** A fence of a Markdown text that holds plans. */
export interface PlanFence {
    readonly text: string;
    /** Of its first line, from 0. */
    readonly line: number;
}

/**
 * Draws the plans in the fences of a Markdown text, each beside it: `notes-1.svg` is the first fence's. The text itself
 * is left as it is; a page shows a picture with `![](notes-1.svg)`.
 */
export async function drawFences(path: string, options: ViewOptions): Promise<void> {
    const cwd = process.cwd();
    const whole = resolve(path);
    const shown = showPath(whole, cwd);
    const reading = readPlan(whole);
    if (reading.kind === 'refused') throw new Refusal(`${shown} ${reading.reason}.`);
    if (reading.kind === 'unfit') throw new Refusal(`${shown} ${reading.unfit.reason}.`);
    const fences = fencesIn(reading.text);
    if (fences.length === 0)
        throw new Refusal(`There is no fence that begins with \`\`\`spread in ${shown}.`);
    const { dir, name } = parse(whole);
    const files = fences.map(({ text }, index) => {
        const beside = join(dir, `${name}-${index + 1}.spread`);
        return { path: beside, shown: showPath(beside, cwd), text, byteOrderMark: false };
    });
    const asked: Asked = { cwd, folders: [dirname(whole)], files, refusals: [] };
    const run = await check(asked);
    for (const [index, file] of run.files.entries()) {
        for (const finding of file.findings) {
            if (finding.severity !== 'error') continue;
            const line = fences[index]!.line + finding.at.range.start.line + 1;
            terminal.log(`layback: ${shown}:${line}: ${messageOf(finding)}`);
        }
        for (const plan of file.plans) {
            const ofPlan = file.plans.length > 1 ? `-${plan.plan.name}` : '';
            const target = join(dir, `${name}-${index + 1}${ofPlan}.svg`);
            writeWhole(
                target,
                drawView('above', { plan, findings: file.concerning.get(plan.plan.name) ?? [] }, [], options),
            );
            terminal.out(`${showPath(target, cwd)}\n`);
        }
    }
    if (run.files.every(({ plans }) => plans.length === 0))
        throw new Refusal(`There is no spread in any fence of ${shown}.`);
}

/** Fences as CommonMark 0.31 writes them (section 4.5), of those that say `spread`. */
export function fencesIn(markdown: string): PlanFence[] {
    const found: PlanFence[] = [];
    const lines = markdown.split(/\r\n|\r|\n/);
    for (let at = 0; at < lines.length; at++) {
        const [, indent = '', fence, info = ''] = /^( {0,3})(`{3,}|~{3,})[ \t]*(.*)$/.exec(lines[at]!) ?? [];
        if (!fence || (fence.startsWith('`') && info.includes('`'))) continue;
        const closing = new RegExp(`^ {0,3}${fence[0]}{${fence.length},}[ \\t]*$`);
        let end = at + 1;
        while (end < lines.length && !closing.test(lines[end]!)) end++;
        const inner = lines
            .slice(at + 1, end)
            .map((line) => line.replace(new RegExp(`^ {0,${indent.length}}`), ''));
        if (/^spread(\s|$)/.test(info))
            found.push({ text: inner.map((line) => `${line}\n`).join(''), line: at + 1 });
        at = end;
    }
    return found;
}
