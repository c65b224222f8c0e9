import type * as v from 'valibot';
import { lengthRewriter } from '../../../../routing/site/numbers/convert-lengths.ts';
import { siteFileSchema } from '../../../../routing/site/schema/schema.ts';
import type { SiteFile } from '../../../../routing/site/site.ts';
import { everyField } from '../file/every-field.ts';

export const feetFile = everyField() as unknown as SiteFile;

const toMetres = lengthRewriter(siteFileSchema as v.GenericSchema, (feet) => feet * 0.3048);

/** The same lot drawn in metres. */
export const metricFile: SiteFile = { ...toMetres(feetFile), units: 'm' };
