"""The guide as frozen values, read strictly from YAML."""
