# survey
