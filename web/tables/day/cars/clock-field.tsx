import { TextField } from '../../../parts/fields.tsx';

const CLOCK = /^([01]\d|2[0-3]):[0-5]\d$/;

interface ClockProps {
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
}

/** A time of the day, `16:30`. */
export const ClockField = (props: ClockProps) => (
  <TextField {...props} check={(text) => (CLOCK.test(text) ? null : 'a time such as 16:30')} />
);
