import './section.css';
import { useMemo, useState } from 'react';
import type { DrawnItem } from '../../../../calc/sheets/drawing/drawing.ts';
import type { LayerName } from '../../../../calc/sheets/drawing/layers.ts';
import { plainSection, sectionDrawing } from '../../../../calc/sheets/drawing/section-drawing.ts';
import { sectionExtent } from '../../../../calc/sheets/drawing/section-extent.ts';
import { sectionOf } from '../../../../calc/space/section/section.ts';
import type { Section } from '../../../../calc/space/section/shape.ts';
import type { CutSection } from '../../../../routing/site/kinds/sections.ts';
import { printLength } from '../../../../routing/site/numbers/feet-inches.ts';
import type { Units } from '../../../../routing/site/schema/vocabulary.ts';
import { useDocument } from '../../../document/use-document.tsx';
import { Dialog } from '../../../parts/dialog.tsx';
import { Scroller } from '../../../parts/scroller.tsx';
import { Fact, Facts } from '../../facts/facts.tsx';

/** Height of capitals on the large drawing, as a share of the width of what is cut. */
const LETTER = 1 / 85;

/** What a section shows, to scale, and its heights in words; with its dimensions, as its sheet has them, on demand. */
export function SectionView({ section: cut }: { readonly section: CutSection }) {
  const site = useDocument((state) => state.site);
  const plan = useDocument((state) => state.plan);
  const [large, setLarge] = useState(false);
  const section = useMemo(() => sectionOf(site, plan, cut), [site, plan, cut]);
  if (!section) return <p className="quiet">Both ends of this section lie in one place.</p>;
  const { units } = site;
  const said = section.heights.map(({ says, elevation }) => `${says} ${printLength(elevation, units)}`).join(', ');
  return (
    <>
      <SectionPicture items={plainSection(section)} says={`${cut.name}: ${said || 'open ground'}`} />
      <p>
        <button type="button" className="plain" onClick={() => setLarge(true)}>
          Show it with dimensions
        </button>
      </p>
      <SectionFacts section={section} units={units} />
      {large && (
        <Dialog title={cut.name} onClose={() => setLarge(false)}>
          <Scroller className="section-large" aria-label="Section with dimensions">
            <SectionPicture
              items={sectionDrawing(section, units, section.length * LETTER, cut.name).items}
              says={`${cut.name}, with dimensions`}
            />
          </Scroller>
          <p className="quiet">
            Heights are over grade, taken as level. Clear heights are to the lowest overhead work at the cut or seen
            past it. Steel, its sizes and what it bears are checked by others.
          </p>
        </Dialog>
      )}
    </>
  );
}

/** The heights of a section, what is clear over each part of its ground, and its trenches. */
function SectionFacts({ section, units }: { readonly section: Section; readonly units: Units }) {
  const length = (feet: number): string => printLength(feet, units);
  return (
    <Facts>
      {section.ground.map(({ use, name, from, clear, asked }) =>
        clear ? (
          <Fact key={`${use} ${from}`} name={`clear over ${use === 'stall' ? `stall ${name}` : use}`}>
            {length(clear.height)}
            {asked !== null && <span className="quiet">, rule {length(asked)}</span>}
          </Fact>
        ) : null,
      )}
      {section.trenches.map(({ from, to, bottom, cover, surface }) => (
        <Fact key={`trench ${from}`} name="trench">
          {length(to - from)} wide, {length(-bottom)} deep, cover {length(cover)} under {surface}
        </Fact>
      ))}
      {section.heights.toReversed().map(({ says, elevation }) => (
        <Fact key={`${says} ${elevation}`} name={says}>
          {elevation < 0 ? `${length(-elevation)} below grade` : length(elevation)}
        </Fact>
      ))}
    </Facts>
  );
}

function SectionPicture({ items, says }: { readonly items: readonly DrawnItem[]; readonly says: string }) {
  const { minX, minY, maxX, maxY } = sectionExtent(items);
  const room = (maxX - minX) / 60;
  return (
    <svg
      className="section-picture"
      viewBox={[minX - room, -maxY - room, maxX - minX + 2 * room, maxY - minY + 2 * room].join(' ')}
      role="img"
      aria-label={says}
      data-testid="section-picture"
    >
      {items.map((item, i) => (
        <Drawn key={i} item={item} />
      ))}
    </svg>
  );
}

const QUIET: ReadonlySet<LayerName> = new Set(['vehicles', 'framing', 'columns', 'inletZones', 'dimensions']);

function Drawn({ item }: { readonly item: DrawnItem }) {
  const className = `${QUIET.has(item.layer) ? 'quiet-line' : 'line'} on-${item.layer}`;
  switch (item.kind) {
    case 'line': {
      const points = item.points.map(([x, y]) => `${x},${-y}`).join(' ');
      return item.closed ? (
        <polygon className={className} points={points} />
      ) : (
        <polyline className={className} points={points} />
      );
    }
    case 'circle':
      return <circle className={className} cx={item.at[0]} cy={-item.at[1]} r={item.radius} />;
    case 'text': {
      const [x, y] = [item.at[0], -item.at[1]];
      const anchor = ({ left: 'start', middle: 'middle', right: 'end' } as const)[item.anchor];
      return (
        <text
          x={x}
          y={y}
          fontSize={item.height / 0.7}
          textAnchor={anchor}
          transform={item.turn === 0 ? undefined : `rotate(${-item.turn} ${x} ${y})`}
        >
          {item.text}
        </text>
      );
    }
    case 'symbol':
      return null;
  }
}
