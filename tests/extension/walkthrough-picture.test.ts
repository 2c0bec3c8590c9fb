import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { URI } from 'langium';
import { expect, test } from 'vitest';
import { sceneFromAbove } from '../../language/src/drawing/scene.ts';
import { svgOf } from '../../language/src/drawing/svg.ts';
import { load } from '../../language/src/plan/load.ts';
import { createServices } from '../../language/src/plan/services.ts';
import { checkAll } from '../../language/src/rules/check.ts';

const root = resolve(import.meta.dirname, '../..');

test('the picture in the walkthrough is what the first plan of a new team draws today', async () => {
    const starter = `${root}/language/src/command/starter`;
    const loaded = await load(
        createServices(),
        [URI.file(`${starter}/plans/first.spread`)],
        ({ fsPath }) => ({
            kind: 'text',
            // A team's folder keeps its plans below.
            text: readFileSync(fsPath.replace('/plans/', '/'), 'utf8'),
        }),
    );
    const [sheet] = checkAll(loaded);
    const [first] = sheet!.plans;
    expect(first?.plan.name).toBe('first');
    // As it stands beside the steps: small, so that its words can be read.
    const paper = { width: 120, height: 150 };
    const drawn = svgOf(sceneFromAbove(first!, sheet!.judgement.plans.get('first')), { paper, foot: false });
    await expect(drawn).toMatchFileSnapshot(`${root}/extension/walkthrough/diagram.svg`);
});
