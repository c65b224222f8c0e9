import type { AmpacityRow } from '../conductor-rows.ts';
import type { CodeTable } from '../table.ts';

/** Insulated conductors to 2000 V, not more than three that carry current in a raceway, 30 °C ambient. */
export const AMPACITY: CodeTable<AmpacityRow> = {
  source: 'NEC 2023 Table 310.16',
  verified:
    'Agrees with two independent copies of the table, one of them through 600 kcmil only. Rises down every column and across the columns; aluminum is 0.72 to 0.88 of copper.',
  doubts: [
    'Editions before 2011 print other values in places (600 kcmil copper at 60 °C 355, 3 AWG copper at 90 °C 110, 1 AWG copper at 90 °C 150), so an old worked example can differ by a step.',
    '18 and 16 AWG have 90 °C copper values only.',
  ],
  rows: [
    { size: '18', copper: [null, null, 14], aluminum: [null, null, null] },
    { size: '16', copper: [null, null, 18], aluminum: [null, null, null] },
    { size: '14', copper: [15, 20, 25], aluminum: [null, null, null] },
    { size: '12', copper: [20, 25, 30], aluminum: [15, 20, 25] },
    { size: '10', copper: [30, 35, 40], aluminum: [25, 30, 35] },
    { size: '8', copper: [40, 50, 55], aluminum: [35, 40, 45] },
    { size: '6', copper: [55, 65, 75], aluminum: [40, 50, 55] },
    { size: '4', copper: [70, 85, 95], aluminum: [55, 65, 75] },
    { size: '3', copper: [85, 100, 115], aluminum: [65, 75, 85] },
    { size: '2', copper: [95, 115, 130], aluminum: [75, 90, 100] },
    { size: '1', copper: [110, 130, 145], aluminum: [85, 100, 115] },
    { size: '1/0', copper: [125, 150, 170], aluminum: [100, 120, 135] },
    { size: '2/0', copper: [145, 175, 195], aluminum: [115, 135, 150] },
    { size: '3/0', copper: [165, 200, 225], aluminum: [130, 155, 175] },
    { size: '4/0', copper: [195, 230, 260], aluminum: [150, 180, 205] },
    { size: '250', copper: [215, 255, 290], aluminum: [170, 205, 230] },
    { size: '300', copper: [240, 285, 320], aluminum: [195, 230, 260] },
    { size: '350', copper: [260, 310, 350], aluminum: [210, 250, 280] },
    { size: '400', copper: [280, 335, 380], aluminum: [225, 270, 305] },
    { size: '500', copper: [320, 380, 430], aluminum: [260, 310, 350] },
    { size: '600', copper: [350, 420, 475], aluminum: [285, 340, 385] },
    { size: '700', copper: [385, 460, 520], aluminum: [315, 375, 425] },
    { size: '750', copper: [400, 475, 535], aluminum: [320, 385, 435] },
    { size: '800', copper: [410, 490, 555], aluminum: [330, 395, 445] },
    { size: '900', copper: [435, 520, 585], aluminum: [355, 425, 480] },
    { size: '1000', copper: [455, 545, 615], aluminum: [375, 445, 500] },
    { size: '1250', copper: [495, 590, 665], aluminum: [405, 485, 545] },
    { size: '1500', copper: [525, 625, 705], aluminum: [435, 520, 585] },
    { size: '1750', copper: [545, 650, 735], aluminum: [455, 545, 615] },
    { size: '2000', copper: [555, 665, 750], aluminum: [470, 560, 630] },
  ],
};
