"""A plugin that cannot be imported, because a part of it is missing."""

import a_part_that_is_not_installed  # type: ignore[import-not-found]  # noqa: F401
