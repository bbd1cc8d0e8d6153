"""Print the oldest version of each dependency that pyproject.toml promises, as constraints."""

import re
import tomllib
from pathlib import Path

project = tomllib.loads(Path("pyproject.toml").read_text(encoding="utf-8"))["project"]
for requirement in (*project["dependencies"], *project["optional-dependencies"]["test"]):
    print(re.sub(r">=([^,]+).*", r"==\1", requirement))
