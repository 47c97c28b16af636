"""One file for each lesson's page; each names its class in ``PAGE``."""
