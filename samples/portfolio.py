"""Plans a portfolio of sites on a cluster, with dask.distributed (Debian: python3-distributed).

    python3 samples/portfolio.py --out plans.jsonl sites/*.site.json
    python3 samples/portfolio.py --scheduler tcp://head:8786 --out plans.jsonl sites/*.site.json

The command keeps no state: files in, lines of JSON out. So any engine that runs commands will do; this one does the
sites of a worker that dies again elsewhere. Workers must see the files under the same names. One line of JSON a site,
in the order of the arguments, the same bytes as `overrow plan --json`; a file that is refused is named on standard
error with the reason, the rest is done, and the exit status is 2.
"""
import argparse
import shlex
import subprocess
import sys

from distributed import Client

BATCH = 20


def plans(command, paths):
    """[(path, line or None, reason or None)] of one batch. A batch with a bad file is halved until the file stands alone."""
    ran = subprocess.run([*command, "plan", "--json", *paths], capture_output=True)
    if ran.returncode == 0:
        return [(path, line, None) for path, line in zip(paths, ran.stdout.splitlines(keepends=True), strict=True)]
    if ran.returncode != 2:
        raise RuntimeError(f"the command died with {ran.returncode}: {ran.stderr.decode(errors='replace')[-2000:]}")
    if len(paths) == 1:
        return [(paths[0], None, ran.stderr.decode(errors="replace").strip())]
    half = len(paths) // 2
    return plans(command, paths[:half]) + plans(command, paths[half:])


def main():
    words = argparse.ArgumentParser(description="Plans a portfolio of sites on a cluster.")
    words.add_argument("sites", nargs="+")
    words.add_argument("--out", required=True, help="file for the plans, one line of JSON a site")
    words.add_argument("--scheduler", help="address of a running cluster; without it, workers on this machine")
    words.add_argument("--workers", type=int, default=2, help="how many, on this machine")
    words.add_argument("--command", default="npx overrow", help="how the command is called on a worker")
    asked = words.parse_args()
    command = shlex.split(asked.command)
    client = (
        Client(asked.scheduler)
        if asked.scheduler
        else Client(n_workers=asked.workers, threads_per_worker=1, dashboard_address=None)
    )
    refused = 0
    with client, open(asked.out, "wb") as out:
        batches = [asked.sites[i : i + BATCH] for i in range(0, len(asked.sites), BATCH)]
        futures = [client.submit(plans, command, batch, pure=False, retries=2) for batch in batches]
        for done, future in enumerate(futures, 1):
            for path, line, reason in future.result():
                if line is None:
                    refused += 1
                    print(f"{path}: {reason}", file=sys.stderr)
                else:
                    out.write(line)
            future.release()
            print(f"{min(done * BATCH, len(asked.sites))} of {len(asked.sites)}", file=sys.stderr, flush=True)
    return 2 if refused else 0


if __name__ == "__main__":
    sys.exit(main())
