"""cuffwork from Python: a CSV file in, estimates and their agreement out.

Needs Node.js and nothing but Python's own library. Run in the folder of the package, after `npm run build`:
    python3 examples/from_python.py
All people are invented.
"""

import csv
import json
import subprocess


def cuffwork(name, *arguments, entry="study"):
    """One call of a function; a missing value is None both ways."""
    call = {"entry": entry, "function": name, "arguments": arguments}
    run = subprocess.run(
        ["node", "examples/from-json.mjs"], input=json.dumps(call, allow_nan=False), capture_output=True, text=True
    )
    if run.returncode != 0:
        raise ValueError(run.stderr.strip())
    return json.loads(run.stdout)


with open("examples/legs.csv", newline="") as file:
    legs = list(csv.DictReader(file))


def numbers(name):
    return [float(leg[name]) if leg[name] != "" else None for leg in legs]


people = {
    "limb": "leg",
    "posture": "supine",
    "cuffWidthCm": 8,
    "circumferenceCm": numbers("circumferenceCm"),
    "systolicMmHg": numbers("systolicMmHg"),
    "diastolicMmHg": numbers("diastolicMmHg"),
}
lop = cuffwork("columns", {"answer": "occlusion-pressure", "equation": "pooled-curve-thigh-2026", **people})
# A data frame of pandas takes the columns as they are: pandas.DataFrame({"value": lop["value"], "lower": lop["lower"]})
for leg, value, lower, upper in list(zip(legs, lop["value"], lop["lower"], lop["upper"]))[:3]:
    print(f"{leg['person']} {leg['side']:5} {value:.1f} ({lower:.1f} to {upper:.1f}) mmHg, measured {leg['measuredMmHg']}")

# A leg that did not occlude has no measured pressure.
measured = [value if leg["occluded"] == "yes" else None for leg, value in zip(legs, numbers("measuredMmHg"))]
found = cuffwork("agreement", measured, lop["value"], {"person": [leg["person"] for leg in legs]})
bias = found["bias"]
print(f"{found['pairs']} pairs of {found['people']} people, {found['missing']['measured']} without a measured pressure")
print(f"bias {bias['value']:.1f} ({bias['lower']:.1f} to {bias['upper']:.1f}) mmHg")
for caution in found["cautions"]:
    print(caution["text"])

# A wrong call names the field.
try:
    cuffwork("columns", {"answer": "occlusion-pressure", "equation": "pooled-curve-thigh-2026", **people, "cuffWidthCm": 80})
except ValueError as error:
    print(error)
