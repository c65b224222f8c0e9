import { extentWords, withheldWords } from '../../../calc/checks/standing.ts';
import { useDocument } from '../../document/use-document.tsx';

interface StandingProps {
  /** The list of checks is open. */
  readonly open: boolean;
  readonly onToggle: () => void;
}

/** Why a lot in which nothing fails is not called sound, and the way to what was looked at. */
export function WhyNotSound({ open, onToggle }: StandingProps) {
  const plan = useDocument((state) => state.plan);
  const withheld = withheldWords(plan);
  return (
    <>
      {withheld !== '' && <p className="withheld">{withheld}</p>}
      <button type="button" className="plain checks-toggle" aria-expanded={open} onClick={onToggle}>
        {open ? 'Shut the list of checks' : `${extentWords(plan.checks)}: which, and what was not looked at`}
      </button>
    </>
  );
}
