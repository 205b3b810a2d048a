# workbench
