import { COUNTING } from '../../calc/plan/counting.ts';
import { countWith } from './planning.ts';

// Where this is imported, plans have their takeoff and what hangs.
countWith(COUNTING);
