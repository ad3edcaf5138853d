/** A hook's own repository must not stand in for the one that lies around the folder. */
export const NOT_PASSED = ['GIT_DIR', 'GIT_WORK_TREE', 'GIT_INDEX_FILE', 'GIT_PREFIX', 'GIT_OBJECT_DIRECTORY', 'GIT_NAMESPACE'];
