"""Timing for the peers: the median of repeats of a call, one JSON line a figure."""
import json
import sys
import time

REPEATS = 7
PAUSE = 0.06


def median_of(call, at_least=REPEATS):
    """Median seconds of one call and the answer of the first."""
    answer = call(0)
    n = 1
    while True:
        start = time.perf_counter()
        for i in range(n):
            call(i)
        if time.perf_counter() - start > PAUSE or n > 1 << 22:
            break
        n *= 2
    times = []
    for _ in range(at_least):
        start = time.perf_counter()
        for i in range(n):
            call(i)
        times.append((time.perf_counter() - start) / n)
    times.sort()
    return times[len(times) // 2], answer


def figure(job, side, call):
    seconds, answer = median_of(call)
    json.dump({"job": job, "side": side, "nanos": seconds * 1e9, "answer": float(answer), "repeats": REPEATS}, sys.stdout)
    print(flush=True)
